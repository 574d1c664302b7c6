/**
 * The log of edits: what was done, by whom, when, and every row before and after. Undo and redo write those rows back,
 * after looking whether the rows still are what the log left. Nothing is ever taken out of the log.
 */
import type { EditSummary } from "../book-store.js";
import { UndoRefused, isStoreError } from "../errors.js";
import type { StoredRow } from "../records/field.js";
import type { RecordKind } from "../records/record-kinds.js";
import { recordKinds, recordShapes } from "../records/record-shapes.js";
import { checkNotInUse, checkReferences } from "../records/references.js";
import { keyOf, rowTableNamed, sameRow } from "../records/rows.js";
import type { BookDatabase, Tables } from "../records/tables.js";
import { applyRun, currentRows, runsOf } from "./apply-changes.js";
import type { RowChange } from "./list-plan.js";

const LOG_ROWS = 500;

type EditRow = Tables["edit"];

const summaryOf = (row: EditRow, schema: number): EditSummary => ({
  id: row.id,
  at: row.at,
  label: row.label,
  by: row.by_whom,
  rowCount: row.row_count,
  state: row.state === "undone" ? "undone" : "done",
  // Rows of an older schema cannot be written back into the tables of today.
  undoable: row.undoable === 1 && row.schema_number === schema,
});

/** Writes an edit down, within its transaction. What could be redone before cannot be redone any more. */
export const logEdit = async (
  db: BookDatabase,
  what: { at: string; label: string; by: string; undoable: boolean; schema: number },
  changes: readonly RowChange[],
): Promise<void> => {
  const last = await db
    .selectFrom("edit")
    .select((eb) => eb.fn.max("id").as("id"))
    .executeTakeFirst();
  const id = (last?.id ?? 0) + 1;
  await db.updateTable("edit").set({ redoable: 0 }).where("redoable", "=", 1).execute();
  await db
    .insertInto("edit")
    .values({
      id,
      at: what.at,
      label: what.label,
      by_whom: what.by,
      undoable: what.undoable ? 1 : 0,
      state: "done",
      redoable: 0,
      schema_number: what.schema,
      row_count: changes.length,
    })
    .execute();
  for (let start = 0; start < changes.length; start += LOG_ROWS) {
    await db
      .insertInto("edit_row")
      .values(
        changes.slice(start, start + LOG_ROWS).map((change, index) => ({
          edit_id: id,
          position: start + index,
          table_name: change.table,
          row_key: keyOf(rowTableNamed(change.table), change.after ?? change.before ?? {}),
          row_before: change.before === null ? null : JSON.stringify(change.before),
          row_after: change.after === null ? null : JSON.stringify(change.after),
        })),
      )
      .execute();
  }
};

/** Newest first. */
export const readHistory = async (db: BookDatabase, limit: number, schema: number): Promise<readonly EditSummary[]> => {
  const rows = await db.selectFrom("edit").selectAll().orderBy("id", "desc").limit(limit).execute();
  return rows.map((row) => summaryOf(row, schema));
};

const rowFrom = (stored: string | null): StoredRow | null => (stored === null ? null : (JSON.parse(stored) as StoredRow));

const kindOfTable = (table: string): RecordKind | "table" | null =>
  table === "reference_table" ? "table" : (recordKinds.find((kind) => recordShapes[kind].table === table) ?? null);

/** The lists of ids have no foreign key: they are looked after here. */
const checkLists = async (db: BookDatabase, changes: readonly RowChange[]): Promise<void> => {
  const known = new Set<string>();
  const byTable = groupByTable(changes);
  for (const [table, some] of byTable) {
    const kind = kindOfTable(table);
    if (kind === null) continue;
    const last = new Map(some.map((change) => [String((change.after ?? change.before)?.["id"]), change]));
    const gone = [...last].filter(([, change]) => change.after === null).map(([id]) => id);
    const there = [...last.values()].flatMap((change) => (change.after === null ? [] : [change.after]));
    if (gone.length > 0) await checkNotInUse(db, kind, gone);
    if (kind !== "table" && there.length > 0) await checkReferences(db, kind, there, known);
  }
};

/**
 * Takes the newest edit back, or makes the last one taken back again.
 * @returns the edit in its new state; null when there is none
 * @throws {UndoRefused} if a row is not what the log left, or something else refers to it by now
 */
export const stepThroughLog = async (db: BookDatabase, direction: "undo" | "redo", schema: number): Promise<EditSummary | null> => {
  const candidates = db.selectFrom("edit").selectAll().where("undoable", "=", 1).where("schema_number", "=", schema);
  const edit = await (
    direction === "undo"
      ? candidates.where("state", "=", "done").orderBy("id", "desc")
      : candidates.where("redoable", "=", 1).orderBy("id", "asc")
  )
    .limit(1)
    .executeTakeFirst();
  if (edit === undefined) return null;

  const logged = await db
    .selectFrom("edit_row")
    .selectAll()
    .where("edit_id", "=", edit.id)
    .orderBy("position", direction === "undo" ? "desc" : "asc")
    .execute();
  const changes = logged.map((row): RowChange => {
    const [left, right] = [rowFrom(row.row_before), rowFrom(row.row_after)];
    return { table: row.table_name, ...(direction === "undo" ? { before: right, after: left } : { before: left, after: right }) };
  });
  const refuse = (table: string, key: string, why: string, cause?: unknown): UndoRefused =>
    new UndoRefused({ direction, editId: edit.id, label: edit.label, table, key, why, cause });

  for (const run of runsOf(changes)) {
    const table = rowTableNamed(run[0]?.table ?? "");
    const now = await currentRows(
      db,
      table,
      run.map((change) => change.after ?? change.before ?? {}),
    );
    for (const change of run) {
      const key = keyOf(table, change.after ?? change.before ?? {});
      if (!sameRow(table, now.get(key) ?? null, change.before)) throw refuse(table.table, key, "has been changed since");
    }
    try {
      await applyRun(db, run);
    } catch (cause) {
      if (!isForeignKeyFault(cause)) throw cause;
      throw refuse(table.table, keyOf(table, run[0]?.after ?? run[0]?.before ?? {}), "is tied to something that changed since", cause);
    }
  }
  try {
    await checkLists(db, changes);
  } catch (cause) {
    if (!isStoreError(cause) || (cause.code !== "record-in-use" && cause.code !== "dangling-reference")) throw cause;
    throw refuse(
      cause.kind,
      cause.id,
      cause.code === "record-in-use" ? "is used by something else by now" : "needs something that is gone",
      cause,
    );
  }

  const now = direction === "undo" ? ({ state: "undone", redoable: 1 } as const) : ({ state: "done", redoable: 0 } as const);
  await db.updateTable("edit").set(now).where("id", "=", edit.id).execute();
  return summaryOf({ ...edit, ...now }, schema);
};

/** Whether undo or redo could bring a photograph's record back. */
export const logCanBringBack = async (db: BookDatabase, photoId: string, schema: number): Promise<boolean> => {
  const row = await db
    .selectFrom("edit_row")
    .innerJoin("edit", "edit.id", "edit_row.edit_id")
    .select("edit.id")
    .where("table_name", "=", "photo")
    .where("row_key", "=", photoId)
    .where("undoable", "=", 1)
    .where("schema_number", "=", schema)
    .where((eb) => eb.or([eb("state", "=", "done"), eb("redoable", "=", 1)]))
    .limit(1)
    .executeTakeFirst();
  return row !== undefined;
};

const groupByTable = (changes: readonly RowChange[]): ReadonlyMap<string, RowChange[]> => {
  const groups = new Map<string, RowChange[]>();
  for (const change of changes) {
    const group = groups.get(change.table);
    if (group === undefined) groups.set(change.table, [change]);
    else group.push(change);
  }
  return groups;
};

// SQLite's extended result code and PostgreSQL's SQLSTATE for a violated foreign key.
const isForeignKeyFault = (error: unknown): boolean => {
  const code = (error as { code?: unknown } | null)?.code;
  return code === "SQLITE_CONSTRAINT_FOREIGNKEY" || code === "23503";
};
