/**
 * How one field of a record lies in columns. A record's field map names a column for each of its fields, so that a field
 * added to the schema does not compile until it has one. Only text, numbers and null are stored: what every SQL engine has.
 */
import type { RecordKind } from "./record-kinds.js";

export type SqlValue = string | number | null;
/** One row as it is stored: column name -> value. */
export type StoredRow = Readonly<Record<string, SqlValue>>;

/** What a field can refer to. */
export type ReferenceTarget = RecordKind | "table";

export interface Field<T> {
  readonly columns: readonly string[];
  write(value: T): StoredRow;
  /** The value as the record's schema should see it; whatever is damaged is handed on for the schema to refuse. */
  read(row: StoredRow): unknown;
  readonly refersTo?: { readonly kind: ReferenceTarget; readonly list: boolean };
}

/** A field for every property of the record. */
export type FieldMap<R> = { readonly [F in keyof R]-?: Field<R[F]> };

const single = <T>(column: string, to: (value: T) => SqlValue, from: (stored: SqlValue) => unknown): Field<T> => ({
  columns: [column],
  write: (value) => ({ [column]: to(value) }),
  read: (row) => from(row[column] ?? null),
});

const asIs = <V>(value: V): V => value;
/** SQLite keeps no sign of zero; without this a row would not equal itself after a reopening. */
const plainZero = (value: number): number => (value === 0 ? 0 : value);

/** Text as text. */
export const text = (column: string): Field<string> => single(column, asIs, asIs);
export const textOrNull = (column: string): Field<string | null> => single(column, asIs, asIs);
export const number = (column: string): Field<number> => single(column, plainZero, asIs);
export const numberOrNull = (column: string): Field<number | null> =>
  single(column, (value) => (value === null ? null : plainZero(value)), asIs);
/** 0 or 1. */
export const flag = (column: string): Field<boolean> =>
  single(
    column,
    (value) => (value ? 1 : 0),
    (stored) => (stored === 1 ? true : stored === 0 ? false : stored),
  );

const parsed = (stored: SqlValue): unknown => {
  if (typeof stored !== "string") return stored;
  try {
    return JSON.parse(stored) as unknown;
  } catch {
    // Handed on as the text it is: the schema wants a list or an object here and says so with the record's name.
    return stored;
  }
};

/** A small list or a small tagged value as JSON text. */
export const json = (column: string): Field<unknown> => single(column, (value) => JSON.stringify(value), parsed);

/** The id of another record. */
export const reference = (column: string, kind: ReferenceTarget): Field<string> => ({
  ...text(column),
  refersTo: { kind, list: false },
});
export const referenceOrNull = (column: string, kind: ReferenceTarget): Field<string | null> => ({
  ...textOrNull(column),
  refersTo: { kind, list: false },
});
/** A small list of ids of other records, as JSON text. */
export const references = (column: string, kind: ReferenceTarget): Field<readonly string[]> => ({
  ...single<readonly string[]>(column, (value) => JSON.stringify(value), parsed),
  refersTo: { kind, list: true },
});
