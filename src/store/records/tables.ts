/** The tables as kysely sees them: the log and the list of migrations by name, the rows of the book by their maps. */
import type { Kysely, Transaction } from "kysely";
import type { StoredRow } from "./field.js";

interface EditTable {
  id: number;
  at: string;
  label: string;
  by_whom: string;
  undoable: number;
  /** "done" or "undone". */
  state: string;
  /** 1 while redo can bring it back. */
  redoable: number;
  /** The schema its rows are written in; rows of an older schema are history only. */
  schema_number: number;
  row_count: number;
}

interface EditRowTable {
  edit_id: number;
  position: number;
  table_name: string;
  row_key: string;
  row_before: string | null;
  row_after: string | null;
}

interface MigrationTable {
  number: number;
  name: string;
  applied_at: string;
}

export interface Tables {
  edit: EditTable;
  edit_row: EditRowTable;
  migration: MigrationTable;
}

/** A connection, or a transaction on one. */
export type BookDatabase = Kysely<Tables> | Transaction<Tables>;

/**
 * The same connection for tables named at run time. The column maps, and the test that compares them with the database's
 * own list of columns, stand in for the compiler here.
 */
export const rowsIn = (db: BookDatabase): Kysely<Record<string, StoredRow>> => db as unknown as Kysely<Record<string, StoredRow>>;
