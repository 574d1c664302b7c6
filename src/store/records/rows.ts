/** From records to rows and back, for any shape. What comes from a row passes the record's schema before it is trusted. */
import { RecordDamaged, RecordInvalid } from "../errors.js";
import type { StoredKind } from "../errors.js";
import type { Field, SqlValue, StoredRow } from "./field.js";
import { bookShape, recordKinds, recordShapes } from "./record-shapes.js";
import type { Shape } from "./record-shapes.js";
import { tableMetaShape, tableParts } from "./table-shapes.js";

/** What the engine of rows needs to know of an SQL table; records and table parts are alike to it. */
export interface RowTable {
  readonly table: string;
  readonly key: readonly string[];
  readonly columns: readonly string[];
}

const fieldsOf = <R>(shape: Shape<R>): readonly (readonly [string, Field<unknown>])[] =>
  // The map's values are fields of the record's own properties; read one by one their types do not matter.
  Object.entries(shape.fields) as unknown as readonly (readonly [string, Field<unknown>])[];

const columnsOf = <R>(shape: Shape<R>): readonly string[] => fieldsOf(shape).flatMap(([, field]) => field.columns);

const rowTable = <R>(shape: Shape<R>, key: readonly string[], extra: readonly string[]): RowTable => ({
  table: shape.table,
  key,
  columns: [...extra, ...columnsOf(shape)],
});

/** Every table whose rows are logged, by name. */
export const rowTables: ReadonlyMap<string, RowTable> = new Map(
  [
    rowTable(bookShape, ["id"], ["id"]),
    ...recordKinds.map((kind) => rowTable(recordShapes[kind] as Shape<unknown>, ["id"], ["position"])),
    rowTable(tableMetaShape, ["id"], ["position"]),
    ...Object.values(tableParts).map((part) => rowTable(part as unknown as Shape<unknown>, part.key, ["table_id", "position"])),
  ].map((table) => [table.table, table]),
);

/** @throws {RangeError} if no such table is kept */
export const rowTableNamed = (name: string): RowTable => {
  const table = rowTables.get(name);
  if (table === undefined) throw new RangeError(`rowTableNamed requires a logged table: got ${name}`);
  return table;
};

/** The key of a row as one text. */
export const keyOf = (table: RowTable, row: StoredRow): string => table.key.map((column) => String(row[column])).join(" / ");

/** Whether two rows have the same content; a column that one of them lacks counts as null. */
export const sameRow = (table: RowTable, a: StoredRow | null, b: StoredRow | null): boolean =>
  a === null || b === null ? a === b : table.columns.every((column) => (a[column] ?? null) === (b[column] ?? null));

// Half of a surrogate pair is no character: UTF-8 cannot hold it, so it would come back as something else.
const loneSurrogate = /\p{Surrogate}/u;

/**
 * The row of a record, checked by its schema.
 * @throws {RecordInvalid} if it does not fit
 */
export const toRow = <R>(shape: Shape<R>, record: unknown, name: { kind: StoredKind; id: string }): StoredRow => {
  const checked = shape.schema.safeParse(record);
  if (!checked.success) {
    const issue = checked.error.issues[0];
    throw new RecordInvalid({
      ...name,
      where: issue === undefined ? "" : issue.path.map(String).join("."),
      problem: issue === undefined ? "it does not fit its schema" : issue.message,
      cause: checked.error,
    });
  }
  const row: Record<string, SqlValue> = {};
  const values = checked.data as Readonly<Record<string, unknown>>;
  for (const [property, field] of fieldsOf(shape)) {
    const written = field.write(values[property]);
    for (const value of Object.values(written)) {
      if (typeof value === "string" && loneSurrogate.test(value)) {
        throw new RecordInvalid({ ...name, where: property, problem: "it holds half of a character, which no file can keep" });
      }
    }
    Object.assign(row, written);
  }
  return row;
};

/** The record in a row, or what is wrong with it, as a value: one bad row does not lose the others. */
export const fromRow = <R>(
  shape: Shape<R>,
  row: StoredRow,
  name: { kind: StoredKind; id: string },
): { ok: true; value: R } | { ok: false; problem: RecordDamaged } => {
  const raw: Record<string, unknown> = {};
  for (const [property, field] of fieldsOf(shape)) raw[property] = field.read(row);
  const checked = shape.schema.safeParse(raw);
  if (checked.success) return { ok: true, value: checked.data };
  const issue = checked.error.issues[0];
  const problem = issue === undefined ? "it does not fit its schema" : `${issue.path.map(String).join(".")}: ${issue.message}`;
  return { ok: false, problem: new RecordDamaged({ ...name, problem, cause: checked.error }) };
};
