/**
 * Sample quantiles by the nine definitions of Hyndman & Fan (1996), Sample quantiles in statistical packages, The American
 * Statistician 50: 361-365. Type 7 (linear interpolation between the n values at (k-1)/(n-1)) is our default; a work that
 * prints quantiles names the type once.
 */

/** The definition, numbered as in the paper. */
export type QuantileType = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9;

/** Rounding fuzz, as the paper's implementations use, so that 0.1 * 10 counts as 1. */
const fuzz = 4 * Number.EPSILON;

const offsets: Readonly<Record<4 | 5 | 6 | 7 | 8 | 9, readonly [number, number]>> = {
  4: [0, 1],
  5: [0.5, 0.5],
  6: [0, 0],
  7: [1, 1],
  8: [1 / 3, 1 / 3],
  9: [3 / 8, 3 / 8],
};

/**
 * The `p`-quantile of `values` (any order, at least one, all finite), 0 <= p <= 1.
 * @throws {RangeError} when there is no value, a value is not finite, or p lies outside 0-1.
 */
export const quantile = (values: readonly number[], p: number, type: QuantileType = 7): number => {
  const n = values.length;
  if (n === 0) throw new RangeError("quantile: no values");
  if (!(p >= 0 && p <= 1)) throw new RangeError(`quantile: p = ${p} is not between 0 and 1`);
  if (!values.every(Number.isFinite)) throw new RangeError("quantile: every value must be a finite number");
  const sorted = [...values].sort((a, b) => a - b);
  const at = (k: number): number => sorted[Math.min(Math.max(k, 1), n) - 1] ?? 0;
  if (type <= 3) {
    const position = n * p - (type === 3 ? 0.5 : 0);
    const j = Math.floor(position + fuzz);
    const g = position - j;
    const onStep = Math.abs(g) <= fuzz * Math.max(1, position);
    if (!onStep) return at(j + 1);
    if (type === 1) return at(j);
    if (type === 2) return (at(j) + at(j + 1)) / 2;
    return j % 2 === 0 ? at(j) : at(j + 1);
  }
  const [a, b] = offsets[type as 4 | 5 | 6 | 7 | 8 | 9];
  const position = a + p * (n + 1 - a - b);
  const j = Math.floor(position + fuzz);
  const g = position - j;
  const share = Math.abs(g) < fuzz * Math.max(1, position) ? 0 : g;
  // Weighted sum, not lower + share * step: exact when both neighbours are equal or the share is 0.
  return share === 0 ? at(j) : (1 - share) * at(j) + share * at(j + 1);
};

/** The middle of the values: the middle one, or the mean of the two middle ones. @throws {RangeError} when empty. */
export const median = (values: readonly number[]): number => quantile(values, 0.5, 7);
