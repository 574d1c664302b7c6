/** Writing files so that they are there whole, or not at all, whenever the power goes. */
import { createHash, randomUUID } from "node:crypto";
import { constants } from "node:fs";
import { chmod, mkdir, open, rename, rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import type { Readable } from "node:stream";

/** Makes a new name or a rename in a directory durable. */
export const syncFolder = async (folder: string): Promise<void> => {
  // Windows cannot open a directory; there the file system's own journal has to do.
  if (process.platform === "win32") return;
  const handle = await open(folder, constants.O_RDONLY);
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
};

/** Makes a folder and, where it is new, its name durable, up to the folder that was there. */
export const makeFolder = async (folder: string): Promise<void> => {
  const firstMade = await mkdir(folder, { recursive: true });
  if (firstMade === undefined) return;
  for (let made = folder; made.length >= firstMade.length; made = dirname(made)) await syncFolder(dirname(made));
};

export interface Incoming {
  readonly path: string;
  /** SHA-256, 64 lower-case hexadecimal digits. */
  readonly sha256: string;
  readonly bytes: number;
}

/**
 * Writes bytes to a new temporary file, hashed on the way and fsynced. On failure the temporary file is removed.
 * @param incoming folder for temporary files, in the same file system as where the file will go
 */
export const writeIncoming = async (
  incoming: string,
  bytes: Readable | Uint8Array,
  active: Set<string>,
  mode: number,
): Promise<Incoming> => {
  const path = join(incoming, `${randomUUID()}.part`);
  const hash = createHash("sha256");
  let count = 0;
  active.add(path);
  try {
    const handle = await open(path, "wx");
    try {
      const parts: AsyncIterable<unknown> | Iterable<unknown> = bytes instanceof Uint8Array ? [bytes] : bytes;
      for await (const part of parts) {
        const chunk = typeof part === "string" ? Buffer.from(part) : part;
        if (!(chunk instanceof Uint8Array)) throw new TypeError("writeIncoming requires a stream of bytes: got objects");
        hash.update(chunk);
        count += chunk.byteLength;
        for (let done = 0; done < chunk.byteLength;) done += (await handle.write(chunk, done)).bytesWritten;
      }
      await handle.sync();
    } finally {
      await handle.close();
    }
    await chmod(path, mode);
    return { path, sha256: hash.digest("hex"), bytes: count };
  } catch (error) {
    await rm(path, { force: true });
    active.delete(path);
    throw error;
  }
};

/** Makes a file's bytes durable. */
const syncFile = async (path: string): Promise<void> => {
  const handle = await open(path, "r+");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
};

/** Syncs a file written by others and gives it its name, durably. */
export const putInPlace = async (from: string, to: string): Promise<void> => {
  await makeFolder(dirname(to));
  await syncFile(from);
  await rename(from, to);
  await syncFolder(dirname(to));
};
