/** Ratios of two measures of the same organs. */
import type { CharacterId, OutingId } from "../base/ids.js";
import type { Reading } from "./evidence.js";

/**
 * Ratios organ by organ: the first length with the first width of the same outing, the second with the second. Never a
 * ratio of means. Series of unequal length pair as far as the shorter goes. Where an outing has more series of one measure
 * than of the other (one may be left out), nobody knows which organs belong together: then there is no ratio.
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
    if (above.length !== below.length) continue;
    above.forEach((lengths, series) => {
      const widths = below[series];
      if (widths === undefined) return;
      for (let i = 0; i < Math.min(lengths.values.length, widths.values.length); i += 1) {
        const width = widths.values[i] ?? 0;
        if (width > 0) values.push((lengths.values[i] ?? 0) / width);
      }
      from.push(lengths, widths);
    });
  }
  return { values, from };
};
