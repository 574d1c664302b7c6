/**
 * The photo files of a book. Originals lie under the SHA-256 of their bytes, `originals/ab/cd/<sha256>`, read-only and
 * without an extension: the name says what the bytes are and nothing else, so the same photograph brought as .JPG and
 * .jpeg is one file, and a format recognised better later renames nothing. What a file is called outside stands in its
 * record, and an archive gives the extension back. Derivatives lie at `derived/<size>/ab/<sha256>.jpg`.
 */
import { existsSync, renameSync } from "node:fs";
import { rename, rm, stat } from "node:fs/promises";
import { dirname, join } from "node:path";
import { photoId } from "../engine/index.js";
import type { PhotoId } from "../engine/index.js";
import type { DerivativeSize, PhotoFiles } from "./book-store.js";
import { makeFolder, syncFolder, writeIncoming } from "./durable-files.js";
import { OriginalInUse } from "./errors.js";

const READ_ONLY = 0o444;

/** The path of an original from the book's folder on; the id has been checked, so it is safe in a path. */
export const originalName = (id: PhotoId): string => join("originals", id.slice(0, 2), id.slice(2, 4), id);

const checked = (id: PhotoId): PhotoId => {
  const result = photoId.safeParse(id);
  if (!result.success) throw new RangeError(`a photo file requires a SHA-256 in hexadecimal as its id: got ${id}`);
  return result.data;
};

/**
 * @param isReferred whether a record, or an edit that can be undone or redone, refers to an original
 * @param tagged turns what the file system says into an error of the store
 * @param active temporary files being written, for the proof to leave alone
 */
export const photoFiles = (
  folder: string,
  effects: {
    isReferred: (id: PhotoId) => Promise<boolean>;
    tagged: (error: unknown) => unknown;
    active: Set<string>;
  },
): PhotoFiles => {
  const incoming = join(folder, "incoming");
  const originalPath = (id: PhotoId): string => join(folder, originalName(checked(id)));
  const derivativePath = (id: PhotoId, size: DerivativeSize): string =>
    join(folder, "derived", String(size), checked(id).slice(0, 2), `${id}.jpg`);
  const isFile = async (path: string): Promise<boolean> => {
    try {
      const found = await stat(path);
      return found.isFile() && found.size > 0;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === "ENOENT") return false;
      throw effects.tagged(error);
    }
  };
  const tag = async <T>(task: () => Promise<T>): Promise<T> => {
    try {
      return await task();
    } catch (error) {
      throw effects.tagged(error);
    }
  };

  return {
    originalPath,
    derivativePath,
    hasOriginal: (id) => isFile(originalPath(id)),
    hasDerivative: (id, size) => isFile(derivativePath(id, size)),
    addOriginal: (bytes) =>
      tag(async () => {
        const written = await writeIncoming(incoming, bytes, effects.active, READ_ONLY);
        try {
          const id = photoId.parse(written.sha256);
          const path = originalPath(id);
          await makeFolder(dirname(path));
          // Looked at and renamed in one breath: no other task of this process comes between, and no other process may write.
          const isNew = !existsSync(path);
          if (isNew) renameSync(written.path, path);
          else await rm(written.path, { force: true });
          // Also when it was there: a run killed after its rename may have left the name unsynced.
          await syncFolder(dirname(path));
          return { id, bytes: written.bytes, path, isNew };
        } catch (error) {
          await rm(written.path, { force: true });
          throw error;
        } finally {
          effects.active.delete(written.path);
        }
      }),
    discardOriginal: (id) =>
      tag(async () => {
        const path = originalPath(id);
        if (await effects.isReferred(id)) throw new OriginalInUse(id);
        await rm(path, { force: true });
      }),
    writeDerivative: (id, size, jpeg) =>
      tag(async () => {
        const path = derivativePath(id, size);
        const written = await writeIncoming(incoming, jpeg, effects.active, 0o644);
        try {
          await makeFolder(dirname(path));
          // The bytes are synced, so whatever bears the name is whole. The directory is not: when the power goes, the name
          // may be lost, and the derivative is made again from its original.
          await rename(written.path, path);
        } finally {
          await rm(written.path, { force: true });
          effects.active.delete(written.path);
        }
      }),
  };
};
