/**
 * When a stage may be expected, from the usual months in words. The season's own model will replace the months by dates
 * learned from visits; what asks for a window stays the same.
 */
import { addDays, type IsoDate } from "../base/dates.js";
import type { Stage } from "../characters/vocabulary.js";

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"] as const;

/** First and last month, 1-12, of "Jul", "Jul-Sep", "Dec-Mar", "7-8"; null when it cannot be read. */
export const readMonths = (text: string): { readonly first: number; readonly last: number } | null => {
  const parts = text
    .toLowerCase()
    .split(/[-–]|\bto\b/u)
    .map((part) => part.trim())
    .filter((part) => part !== "");
  const month = (part: string): number => {
    if (/^\d{1,2}$/u.test(part)) return Number(part) <= 12 ? Number(part) : 0;
    return MONTHS.findIndex((name) => part.startsWith(name)) + 1;
  };
  if (parts.length < 1 || parts.length > 2) return null;
  const first = month(parts[0] ?? "");
  const last = month(parts.at(-1) ?? "");
  return first > 0 && last > 0 ? { first, last } : null;
};

export interface DateWindow {
  readonly from: IsoDate;
  readonly to: IsoDate;
}

const monthStart = (year: number, month: number): IsoDate => `${String(year)}-${String(month).padStart(2, "0")}-01` as IsoDate;

/** The window of a stage that begins in `year`; it may end in the next (December to March). null: its months are not known. */
export const stageWindow = (stage: Stage, year: number): DateWindow | null => {
  const months = readMonths(stage.usualMonths);
  if (months === null) return null;
  const endYear = months.last >= months.first ? year : year + 1;
  const nextMonth = months.last === 12 ? monthStart(endYear + 1, 1) : monthStart(endYear, months.last + 1);
  return { from: monthStart(year, months.first), to: addDays(nextMonth, -1) };
};

/**
 * The next time, on or after a day, that any of some stages may be expected: the running window or the next one, joined over
 * stages that touch. null when no stage has known months.
 */
export const nextWindow = (stages: readonly Stage[], after: IsoDate): DateWindow | null => {
  const year = Number(after.slice(0, 4));
  const windows = [year - 1, year, year + 1]
    .flatMap((y) => stages.flatMap((stage) => stageWindow(stage, y) ?? []))
    .filter((window) => window.to >= after)
    .toSorted((a, b) => (a.from < b.from ? -1 : 1));
  const first = windows[0];
  if (first === undefined) return null;
  let to = first.to;
  for (const window of windows) if (window.from <= addDays(to, 1) && window.to > to) to = window.to;
  return { from: first.from < after ? after : first.from, to };
};
