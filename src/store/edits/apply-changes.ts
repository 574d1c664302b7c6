/** Carries row changes out: runs of the same deed on the same table go to the database in few statements. */
import type { StoredRow } from "../records/field.js";
import { keyOf, rowTableNamed } from "../records/rows.js";
import type { RowTable } from "../records/rows.js";
import { rowsIn } from "../records/tables.js";
import type { BookDatabase } from "../records/tables.js";
import type { RowChange } from "./list-plan.js";

/** Well below what engines allow as parameters of one statement (SQLite 32,766). */
const PARAMETERS = 4000;
/** Below the depth of expression SQLite allows (1000). */
const KEYS = 200;

const chunks = function* <T>(list: readonly T[], size: number): Generator<readonly T[]> {
  for (let start = 0; start < list.length; start += size) yield list.slice(start, start + size);
};

const fullRow = (table: RowTable, row: StoredRow): StoredRow =>
  Object.fromEntries(table.columns.map((column) => [column, row[column] ?? null]));

/** Inserts or replaces rows by their keys; the keys differ. */
const putRows = async (db: BookDatabase, table: RowTable, rows: readonly StoredRow[]): Promise<void> => {
  const others = table.columns.filter((column) => !table.key.includes(column));
  for (const some of chunks(rows, Math.max(1, Math.floor(PARAMETERS / table.columns.length)))) {
    await rowsIn(db)
      .insertInto(table.table)
      .values(some.map((row) => fullRow(table, row)))
      .onConflict((conflict) =>
        conflict
          .columns([...table.key])
          .doUpdateSet((eb) => Object.fromEntries(others.map((column) => [column, eb.ref(`excluded.${column}`)]))),
      )
      .execute();
  }
};

const removeRows = async (db: BookDatabase, table: RowTable, rows: readonly StoredRow[]): Promise<void> => {
  for (const some of chunks(rows, KEYS)) {
    await rowsIn(db)
      .deleteFrom(table.table)
      .where((eb) => eb.or(some.map((row) => eb.and(table.key.map((column) => eb(column, "=", row[column] ?? null))))))
      .execute();
  }
};

/** The rows as they stand now, by the text of their key; those that are not there are missing from the map. */
export const currentRows = async (
  db: BookDatabase,
  table: RowTable,
  rows: readonly StoredRow[],
): Promise<ReadonlyMap<string, StoredRow>> => {
  const found = new Map<string, StoredRow>();
  for (const some of chunks(rows, KEYS)) {
    const now = await rowsIn(db)
      .selectFrom(table.table)
      .selectAll()
      .where((eb) => eb.or(some.map((row) => eb.and(table.key.map((column) => eb(column, "=", row[column] ?? null))))))
      .execute();
    for (const row of now) found.set(keyOf(table, row), row);
  }
  return found;
};

/** Splits changes into runs on one table, of one deed, in which no row occurs twice. */
export const runsOf = (changes: readonly RowChange[]): readonly (readonly RowChange[])[] => {
  const runs: RowChange[][] = [];
  let keys = new Set<string>();
  for (const change of changes) {
    const run = runs.at(-1);
    const first = run?.[0];
    const row = change.after ?? change.before;
    const key = row === null ? "" : keyOf(rowTableNamed(change.table), row);
    if (run !== undefined && first?.table === change.table && (first.after === null) === (change.after === null) && !keys.has(key)) {
      run.push(change);
      keys.add(key);
    } else {
      runs.push([change]);
      keys = new Set([key]);
    }
  }
  return runs;
};

/** Carries out one run. */
export const applyRun = async (db: BookDatabase, run: readonly RowChange[]): Promise<void> => {
  const first = run[0];
  if (first === undefined) return;
  const table = rowTableNamed(first.table);
  if (first.after === null) {
    await removeRows(
      db,
      table,
      run.flatMap((change) => (change.before === null ? [] : [change.before])),
    );
  } else {
    await putRows(
      db,
      table,
      run.flatMap((change) => (change.after === null ? [] : [change.after])),
    );
  }
};

/** Carries out all changes in their order. */
export const applyChanges = async (db: BookDatabase, changes: readonly RowChange[]): Promise<void> => {
  for (const run of runsOf(changes)) await applyRun(db, run);
};
