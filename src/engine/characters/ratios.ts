/** Ratios of two measures of the same organs. */
import type { CharacterId, OutingId } from "../base/ids.js";
import type { Reading } from "./evidence.js";

/**
 * Ratios organ by organ: the first length with the first width of the same outing, the second with the second. Never a
 * ratio of means. Series of unequal length pair as far as the shorter goes.
 */
export const ratiosOf = (
  readings: readonly Reading[],
  numerator: CharacterId,
  denominator: CharacterId,
): { readonly values: readonly number[]; readonly from: readonly Reading[] } => {
  const outings = [...new Set(readings.map((reading) => reading.outingId))];
  const valuesIn = (outing: OutingId, character: CharacterId): readonly Reading[] =>
    readings.filter((reading) => reading.outingId === outing && reading.characterId === character);
  const values: number[] = [];
  const from: Reading[] = [];
  for (const outing of outings) {
    const above = valuesIn(outing, numerator);
    const below = valuesIn(outing, denominator);
    const lengths = above.flatMap((reading) => reading.values);
    const widths = below.flatMap((reading) => reading.values);
    const pairs = Math.min(lengths.length, widths.length);
    for (let i = 0; i < pairs; i += 1) {
      const width = widths[i] ?? 0;
      if (width > 0) values.push((lengths[i] ?? 0) / width);
    }
    if (pairs > 0) from.push(...above, ...below);
  }
  return { values, from };
};
