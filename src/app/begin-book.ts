/** Begins a new, empty book with the usual stages and views, or puts a backup back. */
import type { BookInfo } from "../engine/index.js";
import { bookInfo } from "../engine/index.js";
import { beginBook, restoreLatestBackup } from "../store/index.js";
import { benchOn } from "./open-workbench.js";
import type { OpenBench } from "./open-workbench.js";
import { readDemo } from "./demo-file.js";

/**
 * An empty book. Stages and standard views are those of the demo: they are general words, not findings.
 * @throws the store's `folder-not-empty`, `folder-not-writable`, `disk-full`.
 */
export const beginEmptyBook = async (
  folder: string,
  info: Partial<BookInfo> & { readonly title: string },
  { clock, programRoot }: { readonly clock: () => Date; readonly programRoot: string },
): Promise<OpenBench> => {
  const { content } = await readDemo(programRoot);
  return benchOn(await beginBook(folder, bookInfo.parse(info), { clock, stages: content.stages, views: content.views }), clock);
};

/** Puts the newest sound backup in the place of the database; the damaged files are kept beside. */
export const restoreBook = restoreLatestBackup;
