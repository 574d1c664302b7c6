/** Begins a new, empty book with the usual stages and views, or puts a backup back. */
import type { BookInfo } from "../engine/index.js";
import { bookInfo } from "../engine/index.js";
import { beginBook, restoreLatestBackup } from "../store/index.js";
import { benchOn } from "./open-workbench.js";
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

/** Puts the newest sound backup in the place of the database; the damaged files are kept beside. */
export const restoreBook = restoreLatestBackup;
