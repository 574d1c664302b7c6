/**
 * A book's store in memory, for tests of use cases: records in maps, one edit all or nothing, photo files in a temporary
 * folder since the workers read paths. No undo, no reference checks, no proof: those are the real store's own.
 */
import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { readdir, rename, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { bookInfo, photoId } from "../../src/engine/index.js";
import type { PhotoId } from "../../src/engine/index.js";
import type { BookStore, DerivativeSize, EditSummary, RecordKind, RecordOf } from "../../src/store/index.js";

export interface MemoryStore extends BookStore {
  /** Names of the originals there. */
  originals(): Promise<string[]>;
  /** Called at the beginning of each edit; throw to make it fail. */
  onEdit: (label: string) => void;
}

/** Opens an empty one. `close` removes its folder. */
export const memoryStore = (): MemoryStore => {
  const folder = mkdtempSync(join(tmpdir(), "stipule-memory-"));
  mkdirSync(join(folder, "originals"));
  mkdirSync(join(folder, "derived"));
  let records = new Map<RecordKind, Map<string, RecordOf[RecordKind]>>();
  const edits: EditSummary[] = [];
  const exists = (path: string): Promise<boolean> =>
    stat(path).then(
      () => true,
      () => false,
    );
  const originalPath = (id: PhotoId): string => join(folder, "originals", id);
  const derivativePath = (id: PhotoId, size: DerivativeSize): string => join(folder, "derived", `${id}-${size}.jpg`);
  const unused = (): never => {
    throw new RangeError("memoryStore does not do this; use the real store");
  };
  let temporary = 0;
  const store: MemoryStore = {
    folder,
    opening: { leftoversRemoved: 0, schemaBefore: 1, schema: 1, backup: null, backupFailure: null },
    onEdit: () => undefined,
    originals: () => readdir(join(folder, "originals")),
    files: {
      addOriginal: async (bytes) => {
        const chunks: Uint8Array[] = [];
        for await (const chunk of bytes instanceof Uint8Array ? [bytes] : (bytes as Readable)) chunks.push(chunk as Uint8Array);
        const whole = Buffer.concat(chunks);
        const id = photoId.parse(createHash("sha256").update(whole).digest("hex"));
        const path = originalPath(id);
        const isNew = !(await exists(path));
        const incoming = join(folder, `incoming-${(temporary += 1)}`);
        await writeFile(incoming, whole);
        await rename(incoming, path);
        return { id, bytes: whole.length, path, isNew };
      },
      originalPath,
      hasOriginal: (id) => exists(originalPath(id)),
      discardOriginal: async (id) => {
        if (records.get("photo")?.has(id) === true) throw new Error("a record refers to this original");
        await rm(originalPath(id), { force: true });
      },
      derivativePath,
      hasDerivative: (id, size) => exists(derivativePath(id, size)),
      writeDerivative: (id, size, jpeg) => writeFile(derivativePath(id, size), jpeg),
    },
    info: () => Promise.resolve(bookInfo.parse({ title: "A book in memory" })),
    list: <K extends RecordKind>(kind: K) => Promise.resolve([...(records.get(kind)?.values() ?? [])] as RecordOf[K][]),
    count: <K extends RecordKind>(kind: K, empty: readonly (keyof RecordOf[K])[] = []) => {
      const all = [...(records.get(kind)?.values() ?? [])] as RecordOf[K][];
      return Promise.resolve(all.filter((record) => empty.every((field) => record[field] === null)).length);
    },
    get: <K extends RecordKind>(kind: K, id: string) => Promise.resolve(records.get(kind)?.get(id) as RecordOf[K] | undefined),
    tables: () => Promise.resolve([]),
    table: () => Promise.resolve(undefined),
    content: unused,
    damaged: () => Promise.resolve([]),
    putContent: unused,
    backupTo: unused,
    edit: async (what, change) => {
      store.onEdit(what.label);
      const draft = new Map([...records].map(([kind, all]) => [kind, new Map(all)]));
      let rowCount = 0;
      const result = await change({
        get: <K extends RecordKind>(kind: K, id: string) => Promise.resolve(draft.get(kind)?.get(id) as RecordOf[K] | undefined),
        list: <K extends RecordKind>(kind: K) => Promise.resolve([...(draft.get(kind)?.values() ?? [])] as RecordOf[K][]),
        put: (kind, record) => {
          const all = draft.get(kind) ?? new Map<string, RecordOf[RecordKind]>();
          all.set(record.id, record);
          draft.set(kind, all);
          rowCount += 1;
          return Promise.resolve();
        },
        remove: (kind, id) => {
          draft.get(kind)?.delete(id);
          return Promise.resolve();
        },
        putInfo: unused,
        putTable: unused,
        removeTable: unused,
      });
      records = draft;
      if (rowCount === 0) return result;
      const { label, by = "", undoable = true } = what;
      edits.unshift({ id: edits.length + 1, at: "2022-07-27T20:00:00.000Z", label, by, rowCount, state: "done", undoable });
      return result;
    },
    undo: unused,
    redo: unused,
    history: (limit) => Promise.resolve(edits.slice(0, limit)),
    proof: unused,
    close: () => {
      rmSync(folder, { recursive: true, force: true });
      return Promise.resolve();
    },
  };
  return store;
};
