/** Begins a new, empty book with the usual stages and views, or puts a backup back. */
import { readdir } from "node:fs/promises";
import type { BookInfo } from "../engine/index.js";
import { bookInfo } from "../engine/index.js";
import { say } from "../words/index.js";
import { BookDamaged, BookNotFound, beginBook, openBook, restoreLatestBackup } from "../store/index.js";
import { Refused } from "./app-error.js";
import { benchOn, openWorkbench } from "./open-workbench.js";
import type { OpenBench } from "./open-workbench.js";
import { starterVocabulary } from "./starter-kit.js";

/**
 * An empty book with the everyday stages and the standard views.
 * @throws the store's `folder-not-empty`, `folder-not-writable`, `disk-full`.
 */
export const beginEmptyBook = async (
  folder: string,
  info: Partial<BookInfo> & { readonly title: string },
  { clock, programRoot }: { readonly clock: () => Date; readonly programRoot: string },
): Promise<OpenBench> => {
  const { stages, views } = await starterVocabulary(programRoot);
  return benchOn(await beginBook(folder, bookInfo.parse(info), { clock, stages, views }), clock);
};

const isFreeForABook = async (folder: string): Promise<boolean> => {
  try {
    return (await readdir(folder)).length === 0;
  } catch (error) {
    return error instanceof Error && "code" in error && error.code === "ENOENT";
  }
};

/**
 * Opens a book; where the folder does not exist or is empty, begins one in it. A folder with other things in it is left alone.
 * @throws what {@link openWorkbench} and {@link beginEmptyBook} throw
 */
export const openOrBeginBook = async (
  folder: string,
  info: Partial<BookInfo> & { readonly title: string },
  options: { readonly clock: () => Date; readonly programRoot: string },
): Promise<{ readonly bench: OpenBench; readonly begun: boolean }> => {
  try {
    return { bench: await openWorkbench(folder, options), begun: false };
  } catch (error) {
    if (!(error instanceof BookNotFound) || !(await isFreeForABook(folder))) throw error;
    return { bench: await beginEmptyBook(folder, info, options), begun: true };
  }
};

const opens = async (folder: string, clock: () => Date): Promise<boolean> => {
  try {
    await (await openBook(folder, { clock })).close();
    return true;
  } catch (error) {
    if (error instanceof BookDamaged || error instanceof BookNotFound) return false;
    throw error;
  }
};

/**
 * Puts the newest sound backup in the place of the database; the former files are kept beside. A book that opens is not
 * touched unless that is asked for: what was written after the backup would go from it.
 * @throws {Refused} `book-is-sound`; the store's `no-backup`, `book-locked`, `book-too-new`, `folder-not-writable`
 */
export const restoreBook = async (
  folder: string,
  { clock, evenIfSound }: { readonly clock: () => Date; readonly evenIfSound: boolean },
) => {
  if (!evenIfSound && (await opens(folder, clock))) {
    throw new Refused({
      code: "book-is-sound",
      detail: say("refused.book-is-sound", { folder }),
      kept: say("refused.kept"),
      remedy: say("refused.book-is-sound-remedy"),
    });
  }
  return restoreLatestBackup(folder, { clock });
};
