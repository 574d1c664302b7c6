/** Brings a folder of this machine, with all folders in it, in the order of names. Follows no links, so none leads out of it. */
import type { Dirent, ReadStream } from "node:fs";
import { open, readdir, stat } from "node:fs/promises";
import { sep } from "node:path";
import { Refused } from "./app-error.js";
import { bringPhotos } from "./bring-photos.js";
import type { BringEffects, BringReport, PhotoSource } from "./bring-photos.js";
import { say } from "../words/index.js";

export interface FolderReport extends BringReport {
  /** System files, links and what is no file: passed over without a look, by path. */
  readonly passedOver: number;
}

/**
 * Brings every file of a folder. Names that begin with a dot and the index files that systems leave beside photographs are
 * passed over; everything else is looked at and brought or refused.
 *
 * @throws {Refused} when the folder is not there, is no folder or cannot be read. A folder inside it that cannot be read is
 * one refused entry.
 */
export const bringFolder = async (folder: string, effects: BringEffects): Promise<FolderReport> => {
  const found = await stat(folder).catch((cause: unknown) => cause as NodeJS.ErrnoException);
  const why = found instanceof Error ? (found.code ?? found.message) : found.isDirectory() ? null : "ENOTDIR";
  if (why !== null) throw new Refused({ code: "folder-unreadable", detail: say("photo.folder-unreadable", { folder, why }) });
  const passed = { count: 0 };
  const report = await bringPhotos(filesOf(Buffer.from(folder), passed), effects);
  return { ...report, passedOver: passed.count };
};

/** Left by operating systems and cameras beside photographs; none is one. */
const systemFiles = new Set(["thumbs.db", "desktop.ini", "ehthumbs.db"]);

/** Paths as bytes: a file name need not be Unicode, and must still be found again. */
async function* filesOf(folder: Buffer, passed: { count: number }): AsyncGenerator<PhotoSource> {
  let entries: Dirent<Buffer>[];
  try {
    entries = await readdir(folder, { encoding: "buffer", withFileTypes: true });
  } catch (error) {
    yield {
      name: folder.toString("utf8"),
      open: () => {
        throw error;
      },
    };
    return;
  }
  entries.sort((a, b) => Buffer.compare(a.name, b.name));
  for (const entry of entries) {
    const path = Buffer.concat([folder, Buffer.from(sep), entry.name]);
    const text = entry.name.toString("utf8");
    if (text.startsWith(".") || systemFiles.has(text.toLowerCase()) || !(entry.isDirectory() || entry.isFile())) passed.count += 1;
    else if (entry.isDirectory()) yield* filesOf(path, passed);
    else yield { name: text, open: () => openFile(path) };
  }
}

const openFile = async (path: Buffer): Promise<ReadStream> => (await open(path, "r")).createReadStream();
