/** All that is SQLite's own: connections and their settings, checks, backup, and what its error codes mean. */
import { existsSync } from "node:fs";
import Database from "better-sqlite3";
import { Kysely, SqliteDialect, sql } from "kysely";
import { DiskFull, FolderNotWritable, isStoreError } from "../errors.js";
import type { EngineWords } from "../migrations/create-table.js";
import type { Tables } from "../records/tables.js";

/** What a store asks of its database, whichever it is. */
export interface Engine {
  /** The one connection that writes. */
  readonly writer: Kysely<Tables>;
  /** A second one that only reads: it sees the last committed state, also while an edit runs. */
  readonly reader: Kysely<Tables>;
  /** Problems of the file's structure as it is on the disc, in the engine's words; empty when sound. */
  structureProblems(): readonly string[];
  /** Rows whose foreign key leads nowhere. */
  brokenForeignKeys(): readonly { readonly table: string; readonly row: number; readonly target: string }[];
  /** Copies the database, consistently, while it is in use. The file appears whole or is left over with its own name. */
  copyTo(path: string): Promise<void>;
  close(): Promise<void>;
}

/** "Stip" in ASCII, in the header of the file: tells a book from any other SQLite database. */
const APPLICATION_ID = 0x53746970;

export const sqliteWords: EngineWords = { text: "text", whole: "integer", real: "real", tableEnd: sql`strict` };

/** SQLite's result code of an error; empty when it is none of SQLite's. */
const sqliteCode = (error: unknown): string => {
  const code = (error as { code?: unknown } | null)?.code;
  return typeof code === "string" && code.startsWith("SQLITE_") ? code : "";
};

/** Whether the file is no sound database. */
export const meansDamage = (error: unknown): boolean => /^SQLITE_(CORRUPT|NOTADB|FORMAT)/.test(sqliteCode(error));

/** Turns what the disc or SQLite says into a tagged error of the store, where it is one; else hands the error back. */
export const tagged = (error: unknown, folder: string): unknown => {
  if (isStoreError(error)) return error;
  const code = (error as { code?: unknown } | null)?.code;
  if (typeof code !== "string") return error;
  if (code === "ENOSPC" || code === "EDQUOT" || code === "SQLITE_FULL") return new DiskFull(folder, { cause: error });
  if (/^(EACCES|EPERM|EROFS|ENOTDIR|SQLITE_READONLY|SQLITE_CANTOPEN|SQLITE_PERM)/.test(code)) {
    return new FolderNotWritable(folder, { cause: error });
  }
  return error;
};

/** Opens a file that is there. @throws SQLite's own errors */
export const connect = (path: string): Engine => {
  if (!existsSync(path)) throw new RangeError(`connect requires a database that is there: got ${path}`);
  const writing = new Database(path, { fileMustExist: true, timeout: 5000 });
  let reading: Database.Database;
  try {
    writing.pragma("journal_mode = WAL");
    writing.pragma("synchronous = FULL");
    writing.pragma("foreign_keys = ON");
    reading = new Database(path, { fileMustExist: true, timeout: 5000 });
    reading.pragma("query_only = ON");
  } catch (error) {
    writing.close();
    throw error;
  }
  const writer = new Kysely<Tables>({ dialect: new SqliteDialect({ database: writing }) });
  const reader = new Kysely<Tables>({ dialect: new SqliteDialect({ database: reading }) });
  return {
    writer,
    reader,
    structureProblems: () => {
      // A connection of its own: the others have pages in memory, and would not see what the disc has become.
      const fresh = new Database(path, { fileMustExist: true, readonly: true, timeout: 5000 });
      try {
        return structureProblems(fresh, "full");
      } finally {
        fresh.close();
      }
    },
    brokenForeignKeys: () =>
      (reading.pragma("foreign_key_check") as { table: string; rowid: number; parent: string }[]).map((row) => ({
        table: row.table,
        row: row.rowid,
        target: row.parent,
      })),
    copyTo: async (to) => {
      await reading.backup(to);
    },
    close: async () => {
      await reader.destroy();
      if (reading.open) reading.close();
      if (writing.open) writing.pragma("wal_checkpoint(TRUNCATE)");
      await writer.destroy();
      if (writing.open) writing.close();
    },
  };
};

const structureProblems = (database: Database.Database, how: "quick" | "full"): readonly string[] => {
  try {
    const rows = database.pragma(how === "quick" ? "quick_check(3)" : "integrity_check(20)") as Record<string, string>[];
    return rows.flatMap((row) => Object.values(row)).filter((line) => line !== "ok");
  } catch (error) {
    if (!meansDamage(error)) throw error;
    return [error instanceof Error ? error.message : String(error)];
  }
};

/**
 * Looks at a file without changing it.
 * @returns its schema number (0 = none) or what is wrong with it
 */
export const inspect = (path: string): { ok: true; schema: number } | { ok: false; reason: string; cause?: unknown } => {
  let database: Database.Database | undefined;
  try {
    // Read-only: closing it neither empties the write-ahead log nor touches a damaged file.
    database = new Database(path, { fileMustExist: true, readonly: true, timeout: 5000 });
    const id = database.pragma("application_id", { simple: true });
    const problems = structureProblems(database, "quick");
    if (problems.length > 0) return { ok: false, reason: problems.slice(0, 2).join("; ").replaceAll("\n", " ") };
    if (id !== APPLICATION_ID) return { ok: false, reason: "the file is empty or is not a book's database" };
    const row = database.prepare("select max(number) as number from migration").get() as { number: number | null };
    return { ok: true, schema: row.number ?? 0 };
  } catch (cause) {
    if (meansDamage(cause) || sqliteCode(cause) === "SQLITE_ERROR") {
      return { ok: false, reason: cause instanceof Error ? cause.message : String(cause), cause };
    }
    throw cause;
  } finally {
    database?.close();
  }
};

/** Makes an empty database file with our mark, not yet in WAL mode, so that it is one file and can be renamed. */
export const createFile = (path: string): Kysely<Tables> => {
  const database = new Database(path);
  database.pragma(`application_id = ${APPLICATION_ID}`);
  database.pragma("synchronous = FULL");
  database.pragma("foreign_keys = ON");
  return new Kysely<Tables>({ dialect: new SqliteDialect({ database }) });
};
