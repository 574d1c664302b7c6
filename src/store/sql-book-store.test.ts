import Database from "better-sqlite3";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import type { BookContent, PhotoId, TableId } from "../engine/index.js";
import { fixedClock, sampleContent, sampleInfo } from "../../tests/support/store-sample.js";
import { temporaryFolders } from "../../tests/support/temporary-folder.js";
import type { BookStore } from "./index.js";
import { beginBook, isStoreError, openBook } from "./index.js";
import { recordKinds } from "./records/record-shapes.js";
import { rowTables } from "./records/rows.js";

const newFolder = temporaryFolders();
const open = new Set<BookStore>();
afterEach(async () => {
  for (const store of open) await store.close();
  open.clear();
});
const kept = (store: BookStore): BookStore => {
  open.add(store);
  return store;
};
const begin = async (folder = newFolder()): Promise<BookStore> => kept(await beginBook(folder, sampleInfo, { clock: fixedClock }));
const beginWithSample = async (folder = newFolder()): Promise<BookStore> => {
  const store = await begin(folder);
  await store.putContent(sampleContent(), { label: "Lay down the sample", by: "A.B." });
  return store;
};
const reopen = async (store: BookStore): Promise<BookStore> => {
  await store.close();
  return kept(await openBook(store.folder, { clock: fixedClock }));
};
const first = <T>(list: readonly T[]): T => list[0]!;
/** Changes the database behind the store's back. */
const tamper = (store: BookStore, ...statements: string[]): void => {
  const database = new Database(join(store.folder, "stipule.sqlite"));
  for (const statement of statements) database.exec(statement);
  database.close();
};

describe("tables and column maps", () => {
  it("has in the database exactly the columns that the maps name, in STRICT tables", async () => {
    const store = await begin();
    const database = new Database(join(store.folder, "stipule.sqlite"), { readonly: true });
    for (const table of rowTables.values()) {
      const columns = database.prepare("select name from pragma_table_info(?)").all(table.table) as { name: string }[];
      expect([table.table, columns.map((one) => one.name).toSorted()]).toEqual([table.table, table.columns.toSorted()]);
      const { strict } = database.prepare("select strict from pragma_table_list where name = ?").get(table.table) as { strict: number };
      expect([table.table, strict]).toEqual([table.table, 1]);
    }
    expect(database.pragma("journal_mode", { simple: true })).toBe("wal");
    database.close();
  });

  it("the sample has something of every kind, so that the tests here cover every map", () => {
    const content = sampleContent();
    for (const [name, list] of Object.entries(content))
      if (name !== "info") expect([name, (list as unknown[]).length]).not.toEqual([name, 0]);
  });
});

describe("content", () => {
  it("comes back as it was put, in its order, after a restart, and into another book", async () => {
    const store = await reopen(await beginWithSample());
    expect(await store.content()).toEqual(sampleContent());
    const second = await begin();
    await second.putContent(await store.content(), { label: "Bring an archive" });
    expect(await second.content()).toEqual(sampleContent());
    const onlyFinding = (await second.proof()).findings.map((finding) => finding.code);
    expect(onlyFinding).toEqual(["original-missing"]);
  });

  it("is counted by kind, also by fields that are empty, damaged rows included", async () => {
    const store = await beginWithSample();
    const [photo] = sampleContent().photos;
    await store.edit({ label: "Another photograph" }, (edit) =>
      edit.put("photo", { ...photo!, id: "b".repeat(64) as PhotoId, plantId: null, leaveOut: null }),
    );
    expect([await store.count("photo"), await store.count("person"), await store.count("photo", [])]).toEqual([2, 2, 2]);
    expect(await store.count("photo", ["plantId", "leaveOut"])).toBe(1);
    expect(await store.count("photo", ["plantId", "outingId"])).toBe(0);
    tamper(store, "update photo set format = 'no format' where plant_id is null");
    expect([(await store.list("photo")).length, await store.count("photo")]).toEqual([1, 2]);
  });

  it("is replaced whole: what is not in the new content goes, and undo brings it back", async () => {
    const store = await beginWithSample();
    const smaller: BookContent = { ...sampleContent(), looks: [], readings: [], accounts: [], people: sampleContent().people.toReversed() };
    await store.putContent(smaller, { label: "Bring less" });
    expect(await store.content()).toEqual(smaller);
    await store.undo();
    expect(await store.content()).toEqual(sampleContent());
    await store.undo();
    expect(await store.content()).toMatchObject({ info: sampleInfo, plants: [], tables: [] });
  });

  it("is refused when something in it leads nowhere, or occurs twice", async () => {
    const store = await begin();
    const content = sampleContent();
    await expect(store.putContent({ ...content, outings: [] }, { label: "x" })).rejects.toMatchObject({ code: "dangling-reference" });
    await expect(store.putContent({ ...content, people: [...content.people, ...content.people] }, { label: "x" })).rejects.toMatchObject({
      code: "record-invalid",
    });
    expect(await store.history(10)).toHaveLength(1);
  });
});

describe("edit", () => {
  it("keeps all of it or none", async () => {
    const store = await beginWithSample();
    await expect(
      store.edit({ label: "half" }, async (edit) => {
        await edit.put("person", { ...first(sampleContent().people), role: "changed" });
        throw new Error("stopped");
      }),
    ).rejects.toThrow("stopped");
    expect(await store.content()).toEqual(sampleContent());
    expect(await store.history(10)).toHaveLength(2);
  });

  it("sees its own changes; the store sees them afterwards; an unawaited put is kept", async () => {
    const store = await beginWithSample();
    await store.edit({ label: "role" }, async (edit) => {
      void edit.put("person", { ...first(sampleContent().people), role: "changed" });
      expect((await edit.get("person", "P2"))?.role).toBe("changed");
      expect((await edit.list("person")).map((one) => one.role)).toEqual(["changed", ""]);
      expect((await store.get("person", "P2"))?.role).toBe("recorder");
    });
    expect((await store.get("person", "P2"))?.role).toBe("changed");
  });

  it("edits asked for at once are carried out one after another", async () => {
    const store = await beginWithSample();
    await Promise.all(
      Array.from({ length: 20 }, (_, index) =>
        store.edit({ label: `step ${index}` }, async (edit) => {
          const person = (await edit.get("person", "P1"))!;
          await edit.put("person", { ...person, role: person.role + "x" });
        }),
      ),
    );
    expect((await store.get("person", "P1"))?.role).toBe("x".repeat(20));
  });

  it("refuses to be nested, and to be used after its end", async () => {
    const store = await beginWithSample();
    await expect(store.edit({ label: "outer" }, () => store.edit({ label: "inner" }, async () => {}))).rejects.toThrow(TypeError);
    await expect(store.edit({ label: "outer" }, () => store.undo())).rejects.toThrow(TypeError);
    let late: Promise<void> | undefined;
    const escaped = await store.edit({ label: "escape" }, async (edit) => [edit] as const);
    late = escaped[0].remove("person", "P1");
    await expect(late).rejects.toThrow("before its end");
    // The store goes on working.
    await store.edit({ label: "after" }, (edit) => edit.remove("person", "P1"));
    expect(await store.list("person")).toHaveLength(1);
  });

  it("that changes nothing leaves no entry and does not end redo", async () => {
    const store = await beginWithSample();
    await store.edit({ label: "remove" }, (edit) => edit.remove("account", "AC1"));
    await store.undo();
    await store.edit({ label: "nothing" }, (edit) => edit.put("person", first(sampleContent().people)));
    expect((await store.history(10)).map((one) => one.label)).toEqual(["remove", "Lay down the sample", "Begin the book"]);
    expect((await store.redo())?.label).toBe("remove");
  });

  it("names the field of an invalid record and what a reference lacks", async () => {
    const store = await beginWithSample();
    const look = first(sampleContent().looks);
    await expect(store.edit({ label: "x" }, (edit) => edit.put("look", { ...look, states: [] }))).rejects.toMatchObject({
      code: "record-invalid",
      kind: "look",
      id: "L1",
      where: "states",
    });
    await expect(
      store.edit({ label: "x" }, (edit) => edit.put("look", { ...look, photoIds: ["b".repeat(64) as PhotoId] })),
    ).rejects.toMatchObject({ code: "dangling-reference", field: "photoIds", missing: { kind: "photo", id: "b".repeat(64) } });
    await expect(
      store.edit({ label: "x" }, (edit) => edit.put("person", { ...first(sampleContent().people), role: "half \ud83c" })),
    ).rejects.toMatchObject({ code: "record-invalid", where: "role" });
  });

  it("refuses to remove what is used, and says where", async () => {
    const store = await beginWithSample();
    const uses = async (kind: (typeof recordKinds)[number], id: string): Promise<unknown> =>
      store.edit({ label: "x" }, (edit) => edit.remove(kind, id)).catch((error: unknown) => isStoreError(error) && error);
    expect(await uses("photo", "a".repeat(64))).toMatchObject({
      code: "record-in-use",
      usedBy: [{ kind: "look", id: "L1", field: "photoIds" }],
      message: expect.stringContaining('look "L1" (photoIds)') as string,
    });
    expect(await uses("spot", "A")).toMatchObject({ code: "record-in-use", useCount: 2 });
    expect(await uses("stage", "S5")).toMatchObject({ code: "record-in-use", useCount: 3 });
    expect(await uses("plant", "PL1")).toMatchObject({ code: "record-in-use" });
    await expect(store.edit({ label: "x" }, (edit) => edit.removeTable("T1" as TableId))).rejects.toMatchObject({
      code: "record-in-use",
      useCount: 2,
    });
    expect(await store.content()).toEqual(sampleContent());
  });
});

describe("reference tables", () => {
  const table = () => first(sampleContent().tables);

  it("are replaced by difference: one changed score is one row in the log", async () => {
    const store = await beginWithSample();
    const scores = table().scores.map((score, index) => (index === 1 ? { ...score, page: "13" } : score));
    await store.edit({ label: "page" }, (edit) => edit.putTable({ ...table(), scores }));
    expect(first(await store.history(1)).rowCount).toBe(1);
    await store.edit({ label: "drop the first" }, (edit) => edit.putTable({ ...table(), scores: scores.slice(1) }));
    expect(first(await store.history(1)).rowCount).toBe(1);
    expect((await store.table("T1" as TableId))?.scores).toEqual(scores.slice(1));
    await store.edit({ label: "put it back in front" }, (edit) => edit.putTable({ ...table(), scores }));
    expect(first(await store.history(1)).rowCount).toBe(1);
    expect((await store.table("T1" as TableId))?.scores).toEqual(scores);
    expect(await store.tables()).toEqual([
      { id: "T1", title: "Willowherbs, invented", notice: "", taxonCount: 2, characterCount: 2, scoreCount: 4 },
    ]);
  });

  it("are refused with a taxon missing or a cell twice", async () => {
    const store = await begin();
    const put = (change: object): Promise<void> => store.edit({ label: "x" }, (edit) => edit.putTable({ ...table(), ...change }));
    await expect(put({ taxa: table().taxa.slice(1) })).rejects.toMatchObject({ code: "dangling-reference", missing: { kind: "taxon" } });
    await expect(put({ scores: [...table().scores, table().scores[0]] })).rejects.toMatchObject({ code: "record-invalid" });
    expect(await store.tables()).toEqual([]);
  });

  it("go with all their rows, and come back", async () => {
    const store = await begin();
    await store.edit({ label: "put" }, (edit) => edit.putTable(table()));
    await store.edit({ label: "remove" }, (edit) => edit.removeTable("T1" as TableId));
    expect(await store.table("T1" as TableId)).toBeUndefined();
    await store.undo();
    expect(await store.table("T1" as TableId)).toEqual(table());
    await store.redo();
    expect(await store.tables()).toEqual([]);
    expect((await store.proof()).clean).toBe(true);
  });

  it("hold 5,000 scores, put in few statements (bench/store.bench.ts times 100,000)", async () => {
    const store = await begin();
    const character = first(table().characters);
    const taxon = first(table().taxa);
    const large = {
      ...table(),
      characters: Array.from({ length: 200 }, (_, index) => ({ ...character, id: `c${index}` as typeof character.id })),
      taxa: Array.from({ length: 25 }, (_, index) => ({ ...taxon, id: `t${index}` as typeof taxon.id })),
      scores: Array.from({ length: 5_000 }, (_, index) => ({
        ...first(table().scores),
        value: { kind: "states" as const, usual: [first(table().characters).id as never], rarely: [] },
        sourceId: null,
        taxonId: `t${Math.floor(index / 200)}` as typeof taxon.id,
        characterId: `c${index % 200}` as typeof character.id,
      })),
      knownHybrids: [],
    };
    await store.edit({ label: "large" }, (edit) => edit.putTable(large));
    expect(first(await store.tables()).scoreCount).toBe(5_000);
    const changed = { ...large, scores: large.scores.map((score, index) => (index === 2500 ? { ...score, page: "7" } : score)) };
    await store.edit({ label: "one" }, (edit) => edit.putTable(changed));
    expect(first(await store.history(1)).rowCount).toBe(1);
    await store.undo();
    await store.undo();
    expect(await store.tables()).toEqual([]);
  });
});

describe("undo and redo", () => {
  it("work across restarts, newest first, and pass over edits that are not undoable", async () => {
    let store = await beginWithSample();
    await store.edit({ label: "one" }, (edit) => edit.put("person", { ...first(sampleContent().people), role: "one" }));
    await store.edit({ label: "machine", undoable: false }, (edit) => edit.remove("account", "AC1"));
    store = await reopen(store);
    expect(await store.undo()).toMatchObject({ label: "one", state: "undone", rowCount: 1 });
    expect((await store.get("person", "P2"))?.role).toBe("recorder");
    store = await reopen(store);
    expect((await store.redo())?.label).toBe("one");
    expect((await store.get("person", "P2"))?.role).toBe("one");
    expect(await store.redo()).toBeNull();
    expect(await store.history(2)).toEqual([
      { id: 4, at: "2022-07-01T10:00:00.000Z", label: "machine", by: "", rowCount: 1, state: "done", undoable: false },
      { id: 3, at: "2022-07-01T10:00:00.000Z", label: "one", by: "", rowCount: 1, state: "done", undoable: true },
    ]);
  });

  it("a new edit ends redo, and the history stays readable", async () => {
    const store = await beginWithSample();
    const role = (text: string) =>
      store.edit({ label: text }, (edit) => edit.put("person", { ...first(sampleContent().people), role: text }));
    await role("one");
    await role("two");
    await store.undo();
    await store.undo();
    await role("three");
    expect(await store.redo()).toBeNull();
    expect((await store.undo())?.label).toBe("three");
    expect((await store.redo())?.label).toBe("three");
    expect((await store.history(3)).map((one) => [one.label, one.state])).toEqual([
      ["three", "done"],
      ["two", "undone"],
      ["one", "undone"],
    ]);
  });

  it("are refused when a row has another content than the log expects, and nothing changes", async () => {
    const store = await beginWithSample();
    await store.edit({ label: "role" }, async (edit) => {
      await edit.remove("account", "AC1");
      await edit.put("person", { ...first(sampleContent().people), role: "one" });
    });
    await store.edit({ label: "machine", undoable: false }, (edit) =>
      edit.put("person", { ...first(sampleContent().people), role: "by machine" }),
    );
    const before = await store.content();
    await expect(store.undo()).rejects.toMatchObject({
      code: "undo-refused",
      direction: "undo",
      label: "role",
      table: "person",
      key: "P2",
    });
    expect(await store.content()).toEqual(before);
    expect((await store.history(2)).map((one) => one.state)).toEqual(["done", "done"]);
  });

  it("are refused when something else has come to use what they would remove", async () => {
    const store = await beginWithSample();
    const photo = { ...first(sampleContent().photos), id: "b".repeat(64) as PhotoId };
    await store.edit({ label: "photo" }, (edit) => edit.put("photo", photo));
    await store.edit({ label: "machine", undoable: false }, (edit) =>
      edit.put("look", { ...first(sampleContent().looks), photoIds: [photo.id] }),
    );
    await expect(store.undo()).rejects.toMatchObject({ code: "undo-refused", key: photo.id });
    expect(await store.get("photo", photo.id)).toEqual(photo);
    await store.edit({ label: "spot" }, (edit) => edit.put("spot", { ...first(sampleContent().spots), id: "B" as never }));
    await store.edit({ label: "machine", undoable: false }, (edit) =>
      edit.put("plant", { ...first(sampleContent().plants), spotId: "B" as never }),
    );
    await expect(store.undo()).rejects.toMatchObject({ code: "undo-refused", label: "spot" });
    expect((await store.proof()).findings.map((one) => one.code)).toEqual(["original-missing", "original-missing"]);
  });
});

describe("a damaged row", () => {
  it("is named; everything else is read; the proof reports it; a sound one can be put over it", async () => {
    const store = await beginWithSample();
    tamper(store, "update person set initials = '' where id = 'P1'", "update look set state_ids = '[\"yes' where id = 'L1'");
    await expect(store.get("look", "L1")).rejects.toMatchObject({ code: "record-damaged", kind: "look", id: "L1" });
    expect(await store.list("look")).toEqual([]);
    expect((await store.list("person")).map((one) => one.id)).toEqual(["P2"]);
    expect((await store.content()).readings).toEqual(sampleContent().readings);
    expect((await store.damaged()).map((one) => `${one.kind} ${one.id}`)).toEqual(["person P1", "look L1"]);
    const proof = await store.proof();
    expect(proof.clean).toBe(false);
    expect(proof.findings.map((one) => one.code)).toEqual(["record-invalid", "record-invalid", "original-missing"]);
    await store.edit({ label: "mend" }, (edit) => edit.put("look", first(sampleContent().looks)));
    expect((await store.damaged()).map((one) => one.id)).toEqual(["P1"]);
  });

  it("in a reference table is left out by itself", async () => {
    const store = await beginWithSample();
    tamper(store, "update table_score set low = 99 where taxon_id = 'obs' and character_id = 'capsule'");
    expect((await store.table("T1" as TableId))?.scores).toHaveLength(3);
    expect((await store.damaged()).map((one) => `${one.kind} ${one.id}`)).toEqual(["table-part table_score / T1 / obs / capsule / "]);
  });

  it("that refers to nothing is reported by the proof", async () => {
    const store = await beginWithSample();
    tamper(store, "pragma foreign_keys = off", "delete from outing", `update look set photo_ids = '["${"c".repeat(64)}"]'`);
    const codes = (await store.proof()).findings.filter((one) => one.code === "dangling-reference").map((one) => one.text);
    expect(codes.some((text) => text.includes("outing"))).toBe(true);
    expect(codes.some((text) => text.includes(`photo "${"c".repeat(64)}"`))).toBe(true);
  });
});

describe("close", () => {
  it("waits for edits under way, may be called twice, and ends the store", async () => {
    const store = await beginWithSample();
    const edit = store.edit({ label: "slow" }, async (open) => {
      await new Promise((resolve) => setTimeout(resolve, 20));
      await open.remove("account", "AC1");
    });
    await store.close();
    await store.close();
    await edit;
    await expect(store.info()).rejects.toThrow("after close");
    const again = kept(await openBook(store.folder, { clock: fixedClock }));
    expect(await again.list("account")).toEqual([]);
  });
});
