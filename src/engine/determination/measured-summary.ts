/**
 * A series of measured values of one plant brought to what identifies: its mean and the variance of that mean, beyond the
 * differences between plants. Ten leaves of one plant never identify like ten plants.
 */
import type { CharacterEvidence } from "./evidence-input.js";
import type { DeterminationOptions } from "./determination-options.js";

export interface MeasuredSummary {
  readonly mean: number;
  /** Variance of the mean within the plant plus that of the measuring, squared units. */
  readonly variance: number;
  /** Half of the rounding interval of the mean; 0 = taken as exact. */
  readonly halfStep: number;
}

/**
 * Mean and variance of a pooled series by the law of total variance: var(mean) = within-plant variance / n + error of the
 * instrument. The within-plant variance is that of the values, or (withinPlantSpread x mean)^2 for a single value. n is
 * lowered to n / (1 + (n / stems - 1) r) where fewer stems than values are stated (design effect of clusters, Kish 1965,
 * Survey Sampling). The half-width h of the instrument counts as a rectangular error h^2 / 3 common to all values, so it
 * does not shrink with n (JCGM 100:2008, 4.3.7).
 * @returns null when there is no value
 * @throws {RangeError} if a value or the half-width is not finite
 */
export const measuredSummary = (
  evidence: Pick<CharacterEvidence, "values" | "stems" | "plusMinus" | "characterId">,
  isCount: boolean,
  options: Pick<DeterminationOptions, "withinPlantSpread" | "stemCorrelation">,
): MeasuredSummary | null => {
  const { values, stems, plusMinus } = evidence;
  const n = values.length;
  if (n === 0) return null;
  const wrong = values.find((value) => !Number.isFinite(value));
  if (wrong !== undefined) throw new RangeError(`measuredSummary requires finite values of ${evidence.characterId}: got ${wrong}`);
  if (plusMinus !== null && !(plusMinus >= 0 && Number.isFinite(plusMinus))) {
    throw new RangeError(`measuredSummary requires an error >= 0 of ${evidence.characterId}: got ${plusMinus}`);
  }
  const sorted = Float64Array.from(values).sort();
  let mean = 0;
  for (const value of sorted) mean += value / n;
  let squares = 0;
  for (const value of sorted) squares += (value - mean) ** 2;
  const within = n > 1 ? squares / (n - 1) : (options.withinPlantSpread * mean) ** 2;
  const units = stems !== null && stems < n ? n / (1 + (n / stems - 1) * options.stemCorrelation) : n;
  const variance = within / units + (plusMinus ?? 0) ** 2 / 3;
  return { mean, variance: Math.min(variance, 1e300), halfStep: isCount ? 0.5 / n : 0 };
};
