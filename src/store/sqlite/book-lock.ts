/**
 * One program at a time. The lock is SQLite's own on an empty database file, held as long as the book is open: the
 * operating system lets go of it when the process ends, however it ends, so a killed run leaves nothing to clear away.
 * A file with a process id would have to be believed, and ids are given out again.
 */
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { BookLocked, FolderNotWritable } from "../errors.js";

export interface BookLock {
  release(): void;
}

const readHolder = (path: string): { pid: number; since: string } | null => {
  try {
    const holder = JSON.parse(readFileSync(path, "utf8")) as { pid?: unknown; since?: unknown };
    return typeof holder.pid === "number" && typeof holder.since === "string" ? { pid: holder.pid, since: holder.since } : null;
  } catch {
    // Missing or half written: who holds the lock is then simply not known.
    return null;
  }
};

/**
 * @param since instant to tell others, ISO 8601
 * @throws {BookLocked} if it is held, here or in another process
 * @throws {FolderNotWritable} if the lock file cannot be made
 */
export const takeBookLock = (folder: string, since: string): BookLock => {
  // Never read this file by other means in this process: closing any handle on it would give the lock up (POSIX).
  const path = join(folder, "stipule.lock");
  const holderPath = join(folder, "stipule.lock.json");
  let database: Database.Database | undefined;
  try {
    database = new Database(path, { timeout: 0 });
    // Nothing is ever written in it, so it needs no journal file beside it.
    database.pragma("journal_mode = MEMORY");
    database.exec("BEGIN EXCLUSIVE");
  } catch (cause) {
    database?.close();
    const code = (cause as { code?: unknown }).code;
    if (typeof code === "string" && code.startsWith("SQLITE_BUSY")) throw new BookLocked(folder, readHolder(holderPath), { cause });
    throw new FolderNotWritable(folder, { cause });
  }
  const held = database;
  try {
    writeFileSync(holderPath, `${JSON.stringify({ pid: process.pid, since })}\n`);
  } catch (cause) {
    held.close();
    throw new FolderNotWritable(folder, { cause });
  }
  return {
    release: () => {
      rmSync(holderPath, { force: true });
      held.close();
    },
  };
};
