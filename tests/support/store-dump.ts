/**
 * A SQLite database as SQL text, and back: stored books of released schemas are kept as text, so that a difference can be
 * read. Run as a program it writes the stored book of the present schema:
 * `npx tsx tests/support/store-dump.ts tests/integration/fixtures/schema-0001.sql`. Do that once a schema, before its
 * release; never write over a released one.
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { beginBook } from "../../src/store/index.js";
import { fixedClock, sampleContent, sampleInfo } from "./store-sample.js";

const quoted = (value: unknown): string => {
  if (value === null) return "null";
  if (typeof value === "number") return String(value);
  if (typeof value !== "string") throw new TypeError(`quoted requires text, a number or null: got ${typeof value}`);
  return `'${value.replaceAll("'", "''")}'`;
};

/** The statements that make the database again. */
export const dump = (path: string): string => {
  const database = new Database(path, { readonly: true });
  const objects = database
    .prepare("select type, name, sql from sqlite_schema where sql is not null order by type = 'index', rowid")
    .all() as { type: string; name: string; sql: string }[];
  const lines = ["pragma foreign_keys = off;", `pragma application_id = ${String(database.pragma("application_id", { simple: true }))};`];
  for (const { sql } of objects) lines.push(`${sql};`);
  for (const { name } of objects.filter((one) => one.type === "table")) {
    for (const row of database.prepare(`select * from "${name}"`).all() as Record<string, unknown>[]) {
      lines.push(`insert into "${name}" values (${Object.values(row).map(quoted).join(", ")});`);
    }
  }
  database.close();
  return `${lines.join("\n")}\n`;
};

/** Makes a database from such statements. */
export const undump = (sql: string, path: string): void => {
  const database = new Database(path);
  database.exec(sql);
  database.close();
};

/** The book that is kept of every schema: the sample, one edit done and one undone. */
const writeStoredBook = async (target: string): Promise<void> => {
  const folder = mkdtempSync(join(tmpdir(), "stipule-dump-"));
  const store = await beginBook(folder, sampleInfo, { clock: fixedClock });
  await store.putContent(sampleContent(), { label: "Lay down the sample", by: "A.B." });
  const person = sampleContent().people[0];
  if (person === undefined) throw new RangeError("the sample has no people");
  await store.edit({ label: "Change a role" }, (edit) => edit.put("person", { ...person, role: "keeper" }));
  await store.edit({ label: "Remove the account" }, (edit) => edit.remove("account", "AC1"));
  await store.undo();
  await store.close();
  writeFileSync(target, dump(join(folder, "stipule.sqlite")));
  rmSync(folder, { recursive: true });
};

const [, program, target] = process.argv;
if (program?.endsWith("store-dump.ts") === true && target !== undefined) await writeStoredBook(target);
