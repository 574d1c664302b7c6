/** The trays: every sheet lies in exactly one. */
import type { SheetRow } from "../../../contract/index.js";

/** `unsorted`: on no outing yet; `not-sure`: on an outing, at no plant; `left-out`; else the plant's id. */
export type TrayId = "all" | "unsorted" | "not-sure" | "left-out" | `plant:${string}`;

/** The one tray of a sheet. */
export const trayOf = (sheet: Pick<SheetRow, "leftOut" | "plantId" | "outingId">): Exclude<TrayId, "all"> => {
  if (sheet.leftOut) return "left-out";
  if (sheet.plantId !== null) return `plant:${sheet.plantId}`;
  return sheet.outingId === null ? "unsorted" : "not-sure";
};

/** How many sheets lie in each tray. */
export const trayCounts = (sheets: readonly SheetRow[]): ReadonlyMap<TrayId, number> => {
  const counts = new Map<TrayId, number>([["all", sheets.length]]);
  for (const sheet of sheets) {
    const tray = trayOf(sheet);
    counts.set(tray, (counts.get(tray) ?? 0) + 1);
  }
  return counts;
};

export interface TrayFilter {
  readonly tray: TrayId;
  /** Only this day, YYYY-MM-DD; "" = every day. */
  readonly day: string;
}

/** The sheets of a tray, in their order. */
export const sheetsIn = (sheets: readonly SheetRow[], { tray, day }: TrayFilter): readonly SheetRow[] =>
  sheets.filter((sheet) => (tray === "all" || trayOf(sheet) === tray) && (day === "" || sheet.taken?.slice(0, 10) === day));

/** The days on which photographs were taken, in order, with their number. */
export const daysOf = (sheets: readonly SheetRow[]): readonly { readonly day: string; readonly count: number }[] => {
  const counts = new Map<string, number>();
  for (const { taken } of sheets) if (taken !== null) counts.set(taken.slice(0, 10), (counts.get(taken.slice(0, 10)) ?? 0) + 1);
  return [...counts].map(([day, count]) => ({ day, count })).toSorted((a, b) => a.day.localeCompare(b.day));
};
