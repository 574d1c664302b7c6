/** The store of an open book, over whatever database kysely speaks. */
import { AsyncLocalStorage } from "node:async_hooks";
import { rm } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { randomUUID } from "node:crypto";
import type { BookStore, EditDescription, OpeningReport } from "./book-store.js";
import { bookEdit } from "./book-edit.js";
import type { BookEdit } from "./book-edit.js";
import { hasWal, latestBackup } from "./book-folder.js";
import { putInPlace } from "./durable-files.js";
import { logCanBringBack, logEdit, readHistory, stepThroughLog } from "./edits/edit-log.js";
import { oneAtATime } from "./edits/one-at-a-time.js";
import { remembered } from "./remembered.js";
import { BookDamaged } from "./errors.js";
import { photoFiles } from "./photo-files.js";
import { proveBook } from "./proof.js";
import { countRows, readAll, readContent, readInfo, readOne, readTable, readTableSummaries } from "./read-book.js";
import { rowsIn } from "./records/tables.js";
import { meansDamage, tagged } from "./sqlite/sqlite-engine.js";
import type { Engine } from "./sqlite/sqlite-engine.js";

/** What tells the time; tests pass a fixed one. */
export type Clock = () => Date;

/** An edit whose calls wait for each other, and which is of no use after its end. */
const orderly = (inner: BookEdit): { edit: BookEdit; end: () => Promise<void> } => {
  const queue = oneAtATime();
  let open = true;
  const call = <T>(task: () => Promise<T>): Promise<T> => {
    if (!open) return Promise.reject(new TypeError("an edit requires to be used before its end: await every call inside it"));
    return queue.run(task);
  };
  return {
    edit: {
      changes: inner.changes,
      get: (kind, id) => call(() => inner.get(kind, id)),
      list: (kind) => call(() => inner.list(kind)),
      put: (kind, record) => call(() => inner.put(kind, record)),
      remove: (kind, id) => call(() => inner.remove(kind, id)),
      putInfo: (info) => call(() => inner.putInfo(info)),
      putTable: (table) => call(() => inner.putTable(table)),
      removeTable: (id) => call(() => inner.removeTable(id)),
      putContent: (content) => call(() => inner.putContent(content)),
    },
    end: async () => {
      await queue.idle();
      open = false;
    },
  };
};

export const sqlBookStore = ({
  folder,
  engine,
  clock,
  schema,
  opening,
  release,
}: {
  folder: string;
  engine: Engine;
  clock: Clock;
  /** Number of the present schema. */
  schema: number;
  opening: OpeningReport;
  /** Lets the lock go; called last. */
  release: () => void;
}): BookStore => {
  const writers = oneAtATime();
  const inside = new AsyncLocalStorage<{ open: boolean }>();
  const active = new Set<string>();
  let closing: Promise<void> | null = null;

  const told = (error: unknown): unknown =>
    meansDamage(error)
      ? new BookDamaged({
          folder,
          reason: error instanceof Error ? error.message : String(error),
          latestBackup: latestBackup(folder),
          hasWal: hasWal(folder),
          cause: error,
        })
      : tagged(error, folder);
  const guarded = async <T>(task: () => Promise<T>): Promise<T> => {
    if (closing !== null) throw new TypeError(`a store requires to be open: got a call after close of ${folder}`);
    try {
      return await task();
    } catch (error) {
      throw told(error);
    }
  };
  const memory = remembered();
  const alone = <T>(task: () => Promise<T>): Promise<T> =>
    guarded(async () => {
      if (inside.getStore()?.open === true) throw new TypeError("edit, undo and redo require to be called outside an edit");
      return writers.run(() => task().finally(() => memory.forget()));
    });

  const edit = <T>(what: EditDescription, change: (edit: BookEdit) => Promise<T>): Promise<T> =>
    alone(() =>
      engine.writer.transaction().execute(async (db) => {
        const { edit: open, end } = orderly(bookEdit(db));
        const mark = { open: true };
        try {
          const result = await inside.run(mark, () => change(open));
          await end();
          if (open.changes.length > 0) {
            const { label, by = "", undoable = true } = what;
            await logEdit(db, { at: clock().toISOString(), label, by, undoable, schema }, open.changes);
          }
          return result;
        } finally {
          // Also after a failure: a call still waiting must not run on the connection after the transaction.
          await end();
          mark.open = false;
        }
      }),
    );

  return {
    folder,
    opening,
    files: photoFiles(folder, {
      active,
      tagged: told,
      isReferred: async (id) => {
        const row = await rowsIn(engine.reader).selectFrom("photo").select("id").where("id", "=", id).executeTakeFirst();
        return row !== undefined || (await logCanBringBack(engine.reader, id, schema));
      },
    }),
    info: () => guarded(() => readInfo(engine.reader)),
    list: (kind) => guarded(() => memory.once(`list ${kind}`, async () => (await readAll(engine.reader, kind)).records)),
    count: (kind, empty = []) => guarded(() => countRows(engine.reader, kind, empty)),
    get: (kind, id) => guarded(() => readOne(engine.reader, kind, id)),
    tables: () => guarded(() => readTableSummaries(engine.reader)),
    table: (id) =>
      guarded(() => memory.once(`table ${id}`, async () => (await engine.reader.transaction().execute((db) => readTable(db, id))).table)),
    content: () => guarded(async () => (await engine.reader.transaction().execute(readContent)).content),
    damaged: () => guarded(async () => (await engine.reader.transaction().execute(readContent)).damaged),
    edit: (what, change) => edit(what, change),
    putContent: (content, what) => edit(what, (open) => open.putContent(content)),
    undo: () => alone(() => engine.writer.transaction().execute((db) => stepThroughLog(db, "undo", schema))),
    redo: () => alone(() => engine.writer.transaction().execute((db) => stepThroughLog(db, "redo", schema))),
    history: (limit) => guarded(() => readHistory(engine.reader, limit, schema)),
    proof: (progress, signal) =>
      guarded(() => proveBook({ folder, engine, active, ...(progress && { progress }), ...(signal && { signal }) })),
    backupTo: (path) => guarded(() => copyDatabase(engine, path)),
    close: () => {
      closing ??= (async () => {
        await writers.idle();
        try {
          await engine.close();
        } finally {
          release();
        }
      })();
      return closing;
    },
  };
};

/** Copies the database to a temporary name beside `path`, syncs it and gives it its name. */
export const copyDatabase = async (engine: Engine, path: string): Promise<void> => {
  const target = resolve(path);
  const temporary = join(dirname(target), `.${randomUUID()}.part`);
  try {
    await engine.copyTo(temporary);
    await putInPlace(temporary, target);
  } catch (error) {
    await rm(temporary, { force: true });
    throw error;
  }
};
