/** Opening stored books of every released schema, and books of a schema yet to come. */
import { mkdirSync, readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Kysely } from "kysely";
import { beginBook, openBook } from "../../src/store/index.js";
import { migrations } from "../../src/store/migrations/migrate.js";
import type { Migration } from "../../src/store/migrations/migration.js";
import { dump, undump } from "../support/store-dump.js";
import { fixedClock, sampleContent } from "../support/store-sample.js";
import { temporaryFolders } from "../support/temporary-folder.js";

const newFolder = temporaryFolders();
const fixtures = join(import.meta.dirname, "fixtures");
const stored = (name: string): string => {
  const folder = newFolder();
  mkdirSync(folder, { recursive: true });
  undump(readFileSync(join(fixtures, name), "utf8"), join(folder, "stipule.sqlite"));
  return folder;
};
const clock = fixedClock;
const tomorrow: Migration = {
  number: migrations.length + 1,
  name: "of-tomorrow",
  up: async (db: Kysely<unknown>) => {
    await db.schema.alterTable("person").addColumn("of_tomorrow", "text").execute();
  },
};
const failing: Migration = {
  ...tomorrow,
  name: "failing",
  up: async (db, words) => {
    await tomorrow.up(db, words);
    throw new Error("no good");
  },
};

describe("stored books", () => {
  it("there is one of every schema", () => {
    const names = readdirSync(fixtures).filter((name) => /^schema-\d{4}\.sql$/.test(name));
    expect(names.toSorted()).toEqual(migrations.map((one) => `schema-${one.name.slice(0, 4)}.sql`));
  });

  for (const name of readdirSync(fixtures).filter((one) => /^schema-\d{4}\.sql$/.test(one))) {
    it(`${name} opens with its content, history and undo`, async () => {
      const store = await openBook(stored(name), { clock });
      const person = { ...sampleContent().people[0]!, role: "keeper" };
      expect(await store.content()).toEqual({ ...sampleContent(), people: [person, ...sampleContent().people.slice(1)] });
      expect((await store.history(9)).map((one) => [one.label, one.state])).toEqual([
        ["Remove the account", "undone"],
        ["Change a role", "done"],
        ["Lay down the sample", "done"],
        ["Begin the book", "done"],
      ]);
      expect((await store.proof()).findings.map((one) => one.code)).toEqual(["original-missing"]);
      if (store.opening.schemaBefore === store.opening.schema) {
        expect((await store.redo())?.label).toBe("Remove the account");
        expect((await store.undo())?.label).toBe("Remove the account");
        expect((await store.undo())?.label).toBe("Change a role");
        expect(await store.content()).toEqual(sampleContent());
      }
      await store.close();
    });
  }

  it("the first schema made today is, statement by statement, the one that was released", async () => {
    const released = readFileSync(join(fixtures, "schema-0001.sql"), "utf8");
    const folder = stored("schema-0001.sql");
    const fresh = await beginBook(join(newFolder(), "book"), sampleContent().info, { clock });
    await fresh.close();
    const statements = (sql: string): string[] => sql.split("\n").filter((line) => /^create /i.test(line));
    // Later schemas add to it; what they make is compared by the column test of the store.
    if (migrations.length === 1) expect(statements(dump(join(fresh.folder, "stipule.sqlite")))).toEqual(statements(released));
    expect(statements(released).length).toBeGreaterThan(50);
    expect(statements(dump(join(folder, "stipule.sqlite")))).toEqual(statements(released));
  });
});

describe("a step to a newer schema", () => {
  it("is made once after a backup, is recorded, and makes older edits history that undo leaves alone", async () => {
    const folder = stored("schema-0001.sql");
    const store = await openBook(folder, { clock, known: [...migrations, tomorrow] });
    expect(store.opening).toMatchObject({ schemaBefore: 1, schema: 2 });
    expect(store.opening.backup).toContain(join(folder, "backups"));
    expect(await store.undo()).toBeNull();
    expect(await store.redo()).toBeNull();
    expect((await store.history(9)).every((one) => !one.undoable)).toBe(true);
    await store.edit({ label: "new" }, (edit) => edit.remove("account", "AC1"));
    expect((await store.undo())?.label).toBe("new");
    await store.close();
    const again = await openBook(folder, { clock, known: [...migrations, tomorrow] });
    expect(again.opening).toMatchObject({ schemaBefore: 2, schema: 2 });
    expect((await again.redo())?.label).toBe("new");
    await again.close();
  });

  it("that fails leaves the book as it was", async () => {
    const folder = stored("schema-0001.sql");
    await expect(openBook(folder, { clock, known: [...migrations, failing] })).rejects.toMatchObject({
      code: "migration-failed",
      migration: "failing",
      message: expect.stringContaining("as it was before") as string,
    });
    const store = await openBook(folder, { clock });
    expect(store.opening.schemaBefore).toBe(1);
    expect((await store.list("person")).length).toBe(2);
    await store.close();
  });

  it("a book of a newer version is refused and not changed", async () => {
    const folder = stored("schema-0001.sql");
    await (await openBook(folder, { clock, known: [...migrations, tomorrow] })).close();
    const before = readFileSync(join(folder, "stipule.sqlite"));
    await expect(openBook(folder, { clock })).rejects.toMatchObject({
      code: "book-too-new",
      found: 2,
      known: 1,
      message: expect.stringContaining("Update Stipule; nothing was changed") as string,
    });
    expect(readFileSync(join(folder, "stipule.sqlite")).equals(before)).toBe(true);
  });
});
