/** One axis for the ranges of a measured character, so that they can be compared by eye. */
import type { ApartView } from "../../../contract/index.js";

type Range = NonNullable<ApartView["rows"][number]["cells"][number]["range"]>;

/** From where to where the axis runs: all extremes, with a little room; null when nothing is measured. */
export const axisOf = (ranges: readonly (Range | null)[]): { readonly from: number; readonly to: number } | null => {
  const known = ranges.filter((range) => range !== null);
  if (known.length === 0) return null;
  const from = Math.min(...known.map((range) => range.min));
  const to = Math.max(...known.map((range) => range.max));
  const room = to > from ? (to - from) * 0.04 : Math.max(Math.abs(to) * 0.1, 1);
  return { from: from - room < 0 && from >= 0 ? 0 : from - room, to: to + room };
};

/** Place of a value on an axis, 0 to 1. */
export const placeOn = (axis: { readonly from: number; readonly to: number }, value: number): number =>
  Math.min(1, Math.max(0, (value - axis.from) / (axis.to - axis.from)));
