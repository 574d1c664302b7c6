/** Begins a new, empty book with the usual stages and views, or puts a backup back. */
import { readdir } from "node:fs/promises";
import type { BookInfo } from "../engine/index.js";
import { bookInfo } from "../engine/index.js";
import { BookNotFound, beginBook, restoreLatestBackup } from "../store/index.js";
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

/** Puts the newest sound backup in the place of the database; the damaged files are kept beside. */
export const restoreBook = restoreLatestBackup;
