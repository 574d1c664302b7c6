/** What every use case is given: the open book and the effects it may use. Tests hand in a fixed day. */
import type { BookStore } from "../store/index.js";
import type { IsoDate } from "../engine/index.js";

export interface Workbench {
  readonly store: BookStore;
  /** Today's calendar date where the user is. */
  readonly today: () => IsoDate;
}

/** The day a reading of the book stands at: the one asked for, else the book's own reading day, else today. */
export const readingDay = async (workbench: Workbench, upTo: IsoDate | undefined): Promise<IsoDate> =>
  upTo ?? (await workbench.store.info()).readAt ?? workbench.today();
