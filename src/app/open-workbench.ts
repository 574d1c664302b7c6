/** Opens a book's folder as a workbench with its effects, and finds out which folder is meant. */
import { join } from "node:path";
import type { IsoDate } from "../engine/index.js";
import type { PhotoWorkers } from "../media/index.js";
import { openPhotoWorkers } from "../media/index.js";
import { openBook } from "../store/index.js";
import type { BookStore } from "../store/index.js";
import type { Workbench } from "./workbench.js";

/** The calendar date of an instant where the computer stands. */
export const localDate = (instant: Date): IsoDate => {
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${instant.getFullYear()}-${two(instant.getMonth() + 1)}-${two(instant.getDate())}` as IsoDate;
};

interface Whereabouts {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly home: string;
}

/** Where books lie when nobody says: STIPULE_HOME, else ~/Stipule. */
export const homeOfBooks = ({ env, home }: Whereabouts): string => env["STIPULE_HOME"] || join(home, "Stipule");

/** The demo's folder. */
export const demoFolder = (where: Whereabouts): string => join(homeOfBooks(where), "hobbin-carr");

/** The folder of the book when no --book says it: STIPULE_BOOK, else the demo's. */
export const bookFolderOf = (where: Whereabouts): string => where.env["STIPULE_BOOK"] || demoFolder(where);

export interface OpenBench {
  readonly workbench: Workbench;
  /** Threads that read photographs; they start with the first call. */
  readonly workers: () => PhotoWorkers;
  readonly now: () => Date;
  readonly close: () => Promise<void>;
}

/** A bench on a store that is open already. */
export const benchOn = (store: BookStore, clock: () => Date): OpenBench => {
  let pool: PhotoWorkers | undefined;
  return {
    workbench: { store, today: () => localDate(clock()) },
    workers: () => (pool ??= openPhotoWorkers()),
    now: clock,
    close: async () => {
      await pool?.close();
      await store.close();
    },
  };
};

/** @throws the store's tagged errors (`book-not-found`, `book-locked`, `book-damaged`, `book-too-new`, ...). */
export const openWorkbench = async (folder: string, { clock }: { readonly clock: () => Date }): Promise<OpenBench> =>
  benchOn(await openBook(folder, { clock }), clock);
