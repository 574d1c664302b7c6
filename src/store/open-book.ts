/** Opening, beginning and restoring a book. Whatever stands in the way is a tagged error that says the way out. */
import { existsSync, statSync } from "node:fs";
import { copyFile, rm } from "node:fs/promises";
import { join, resolve } from "node:path";
import type { BookInfo, Stage, View } from "../engine/index.js";
import { bookEdit } from "./book-edit.js";
import {
  backupPath,
  backupsIn,
  databasePath,
  hasWal,
  latestBackup,
  makeSkeleton,
  othersIn,
  removeLeftovers,
  setDatabaseAside,
  stamp,
  takenAt,
  thinBackups,
} from "./book-folder.js";
import type { BookStore } from "./book-store.js";
import { makeFolder, putInPlace } from "./durable-files.js";
import { logEdit } from "./edits/edit-log.js";
import { BookDamaged, BookNotFound, BookTooNew, FolderNotEmpty, FolderNotWritable, NoBackup } from "./errors.js";
import { migrate, migrations, presentSchema } from "./migrations/migrate.js";
import type { Migration } from "./migrations/migration.js";
import { copyDatabase, sqlBookStore } from "./sql-book-store.js";
import type { Clock } from "./sql-book-store.js";
import { takeBookLock } from "./sqlite/book-lock.js";
import type { BookLock } from "./sqlite/book-lock.js";
import { connect, createFile, inspect, meansDamage, sqliteWords, tagged } from "./sqlite/sqlite-engine.js";
import type { Engine } from "./sqlite/sqlite-engine.js";

const DAY_MS = 86_400_000;

/** Runs `task` under the book's lock; the lock is let go when it fails. File system errors become tagged ones. */
const locked = async <T>(folder: string, clock: Clock, task: (lock: BookLock) => Promise<T>): Promise<T> => {
  const lock = takeBookLock(folder, clock().toISOString());
  try {
    return await task(lock);
  } catch (error) {
    lock.release();
    throw tagged(error, folder);
  }
};

const damaged = (folder: string, reason: string, cause?: unknown): BookDamaged =>
  new BookDamaged({ folder, reason, latestBackup: latestBackup(folder), hasWal: hasWal(folder), cause });

const backupIfDue = async (folder: string, engine: Engine, now: Date, always: boolean): Promise<string | null> => {
  const last = latestBackup(folder);
  // A backup from the future is the work of a clock set wrong; it must not keep new ones from being taken.
  const isRecent = last !== null && Math.abs(now.getTime() - takenAt(last).getTime()) < DAY_MS;
  if (isRecent && !always) return null;
  const path = backupPath(folder, now);
  await copyDatabase(engine, path);
  await thinBackups(folder);
  return path;
};

/**
 * Opens a book. Half-written files of a killed run are removed, an older schema is brought up to date after a backup, and
 * a backup is taken when the last one is a day old; `opening` of the store tells what was done.
 * @param known for tests: the migrations this version knows
 * @throws {BookNotFound} if there is none
 * @throws {BookLocked} if it is open elsewhere
 * @throws {BookTooNew} if a newer version wrote it
 * @throws {BookDamaged} if its database cannot be read
 * @throws {FolderNotWritable | DiskFull | MigrationFailed}
 */
export const openBook = async (
  folderPath: string,
  { clock, known = migrations }: { clock: Clock; known?: readonly Migration[] },
): Promise<BookStore> => {
  const folder = resolve(folderPath);
  const path = databasePath(folder);
  if (!isFolder(folder)) throw new BookNotFound(folder);
  if (!existsSync(path)) {
    if (latestBackup(folder) === null) throw new BookNotFound(folder);
    throw damaged(folder, "stipule.sqlite is missing");
  }
  return locked(folder, clock, async (lock) => {
    await makeSkeleton(folder);
    const leftoversRemoved = await removeLeftovers(folder);
    const found = inspect(path);
    if (!found.ok) throw damaged(folder, found.reason, found.cause);
    const schema = presentSchema(known);
    if (found.schema > schema) throw new BookTooNew({ folder, found: found.schema, known: schema });
    const engine = connect(path);
    try {
      const now = clock();
      let backup: string | null = null;
      let backupFailure: string | null = null;
      const isOld = found.schema < schema;
      try {
        backup = await backupIfDue(folder, engine, now, isOld);
      } catch (error) {
        // Without a backup no migration; but an ordinary opening must not fail because a copy does.
        if (isOld) throw error;
        const cause = tagged(error, folder);
        backupFailure = cause instanceof Error ? cause.message : String(cause);
      }
      await migrate(engine.writer, { words: sqliteWords, at: now.toISOString(), known });
      const opening = { leftoversRemoved, schemaBefore: found.schema, schema, backup, backupFailure };
      return sqlBookStore({ folder, engine, clock, schema, opening, release: () => lock.release() });
    } catch (error) {
      await engine.close();
      throw meansDamage(error) ? damaged(folder, error instanceof Error ? error.message : String(error), error) : error;
    }
  });
};

/**
 * Begins a book in a new or an empty folder and opens it. The database appears under its name only when it is complete,
 * so a beginning that was killed can be repeated.
 * @throws {FolderNotEmpty} if the folder holds something else, or a book
 * @throws {FolderNotWritable | DiskFull | BookLocked}
 */
export const beginBook = async (
  folderPath: string,
  info: BookInfo,
  {
    clock,
    stages = [],
    views = [],
    label = "Begin the book",
    by = "",
  }: { clock: Clock; stages?: readonly Stage[]; views?: readonly View[]; label?: string; by?: string },
): Promise<BookStore> => {
  const folder = resolve(folderPath);
  if (existsSync(folder) && !isFolder(folder)) throw new FolderNotEmpty({ folder, found: [folder], holdsBook: false });
  refuseOccupied(folder);
  try {
    await makeFolder(folder);
  } catch (error) {
    throw tagged(error, folder) instanceof FolderNotWritable ? new FolderNotWritable(folder, { cause: error }) : error;
  }
  await locked(folder, clock, async (lock) => {
    refuseOccupied(folder);
    await makeSkeleton(folder);
    await removeLeftovers(folder);
    const temporary = join(folder, "incoming", "beginning.sqlite");
    const database = createFile(temporary);
    try {
      const at = clock().toISOString();
      await migrate(database, { words: sqliteWords, at });
      await database.transaction().execute(async (transaction) => {
        const edit = bookEdit(transaction);
        await edit.putInfo(info);
        for (const stage of stages) await edit.put("stage", stage);
        for (const view of views) await edit.put("view", view);
        await logEdit(transaction, { at, label, by, undoable: false, schema: presentSchema() }, edit.changes);
      });
    } finally {
      await database.destroy();
    }
    await putInPlace(temporary, databasePath(folder));
    lock.release();
  });
  return openBook(folder, { clock });
};

/**
 * Puts the newest sound backup in the place of the database. The damaged files are kept in `damaged/<time>/`.
 * @returns which backup, when it was taken (ISO 8601), and where the damaged files are
 * @throws {NoBackup} if there is no sound one
 * @throws {BookLocked} if the book is open
 * @throws {FolderNotWritable | DiskFull}
 */
export const restoreLatestBackup = async (
  folderPath: string,
  { clock }: { clock: Clock },
): Promise<{ readonly backup: string; readonly takenAt: string; readonly damagedKeptIn: string }> => {
  const folder = resolve(folderPath);
  if (!isFolder(folder)) throw new BookNotFound(folder);
  return locked(folder, clock, async (lock) => {
    await makeSkeleton(folder);
    const unsound: string[] = [];
    for (const backup of backupsIn(folder).toReversed()) {
      // Looked at as a copy, so that the backup itself is never written to.
      const copy = join(folder, "incoming", "restored.sqlite");
      await copyFile(backup, copy);
      const found = inspect(copy);
      for (const companion of ["-wal", "-shm"]) await rm(`${copy}${companion}`, { force: true });
      if (!found.ok) {
        await rm(copy, { force: true });
        unsound.push(backup);
        continue;
      }
      const aside = join(folder, "damaged", stamp(clock()));
      await setDatabaseAside(folder, aside);
      await putInPlace(copy, databasePath(folder));
      lock.release();
      return { backup, takenAt: takenAt(backup).toISOString(), damagedKeptIn: aside };
    }
    throw new NoBackup(folder, unsound);
  });
};

/** @throws {FolderNotWritable} where the way there leads through a file, or may not be gone */
const isFolder = (path: string): boolean => {
  try {
    return statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
  } catch (error) {
    throw tagged(error, path);
  }
};

const refuseOccupied = (folder: string): void => {
  const found = othersIn(folder);
  if (found.length > 0) throw new FolderNotEmpty({ folder, found, holdsBook: existsSync(databasePath(folder)) });
};
