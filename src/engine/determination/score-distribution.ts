/**
 * From what a source says of a taxon to chances: words of frequency to frequencies of states, printed ranges to a
 * distribution of values. "Unknown" and "not applicable" stay what they are; neither is ever turned into an absence.
 */
import type { Character, AnswerKind } from "../characters/character.js";
import type { ScoreValue } from "../characters/reference-table.js";
import type { StateId } from "../base/ids.js";
import { fitLogNormal, fitTwoPieceNormal, rangeWidthInSd, type QuantilePoint, type TwoPieceNormal } from "./two-piece-normal.js";

export type ScoreDistribution =
  /** Chance of each state of the character, in its order; sums to 1, no entry 0. */
  | { readonly kind: "frequencies"; readonly frequencies: readonly number[] }
  | TwoPieceNormal
  | { readonly kind: "not-applicable" }
  | { readonly kind: "unknown" };

/**
 * The one table of frequency words. Shares of the plants of a taxon; starting values, common practice, no source.
 * `always` is shared by the usual states where nothing else is said; `rarely` is the share of all rare states together;
 * `never` the share of all states that the source does not name, so that no cell is 0.
 */
export const frequencyWords = { always: 0.98, usually: 0.85, often: 0.6, sometimes: 0.3, rarely: 0.08, never: 0.02 } as const;

/** What the printed numbers of a source mean. The convention belongs to the source. */
export interface RangeConvention {
  /** Share of organs below the low number and above the high number of the usual range. */
  readonly coreTail: number;
  /** Share of organs beyond each bracketed extreme. */
  readonly extremeTail: number;
  /** A range without brackets: null = its ends are the usual range; a number = smallest and largest of so many plants. */
  readonly bareRangePlants: number | null;
}

/**
 * Usual range 10-90 %, extremes 0.5-99.5 %: for a symmetric pattern such as (8-)10-14(-16) the two then agree, since the
 * normal through the core leaves 0.52 % beyond the extremes; 5-95 % would leave 0.05 %, one plant in two thousand.
 */
export const defaultRangeConvention: RangeConvention = { coreTail: 0.1, extremeTail: 0.005, bareRangePlants: null };

/** Spread of a single printed value, as a share of it. Common practice, no source. */
const singleValueSpread = { measure: 0.15, count: 0.05 } as const;
/** No printed range is sharper than this share of its middle. Common practice, no source. */
const leastSpread = 0.02;
/** A log-normal whose root mean square misfit exceeds this share of its spread is given up for a two-piece normal. */
const logNormalTolerance = 0.1;

/**
 * The distribution of one cell.
 *
 * States: usual states share what the rare and the unnamed ones leave: 0.98, or 0.90 where rare ones are named; rare ones
 * share 0.08, unnamed ones 0.02. With only rare states named, the unnamed ones take the rest. Nothing named = unknown.
 *
 * Ranges: log-normal where every number is positive, both extremes are printed, the upper side is the longer and the
 * log-normal fits; for ratios a two-piece normal of the logarithm; else a two-piece normal.
 * @throws {TypeError} if states are scored for a measured character or a range for one of states
 */
export const distributionOfScore = (
  value: ScoreValue,
  character: Pick<Character, "id" | "answer">,
  convention: RangeConvention = defaultRangeConvention,
): ScoreDistribution => {
  const { answer } = character;
  switch (value.kind) {
    case "not-applicable":
    case "unknown":
      return { kind: value.kind };
    case "states":
      if (answer.kind !== "states") throw new TypeError(`distributionOfScore requires a range for ${character.id}: got states`);
      return frequenciesOf(
        value,
        answer.states.map((state) => state.id),
      );
    case "range":
      if (answer.kind === "states") throw new TypeError(`distributionOfScore requires states for ${character.id}: got a range`);
      return distributionOfRange(value, answer.kind, convention);
  }
};

/**
 * Frequencies from counted plants, drawn towards what the source says (Dirichlet prior of m plants): (n_s + m p_s) / (n + m).
 * @param counts plants seen in each state, >= 0
 * @param prior frequencies by the source, same order, sums to 1
 * @param weight m, how many plants the source's word is worth, > 0
 */
export const frequenciesFromCounts = (counts: readonly number[], prior: readonly number[], weight: number): readonly number[] => {
  if (counts.length !== prior.length || !(weight > 0) || counts.some((count) => !(count >= 0))) {
    throw new RangeError(`frequenciesFromCounts requires as many counts >= 0 as prior shares and a weight > 0`);
  }
  const total = counts.reduce((sum, count) => sum + count, 0);
  return counts.map((count, i) => (count + weight * (prior[i] ?? 0)) / (total + weight));
};

const frequenciesOf = (
  value: { readonly usual: readonly StateId[]; readonly rarely: readonly StateId[] },
  states: readonly StateId[],
): ScoreDistribution => {
  const isUsual = states.map((state) => value.usual.includes(state));
  const isRare = states.map((state, i) => !isUsual[i] && value.rarely.includes(state));
  const usual = isUsual.filter(Boolean).length;
  const rare = isRare.filter(Boolean).length;
  const unnamed = states.length - usual - rare;
  if (usual + rare === 0) return { kind: "unknown" };
  const rareShare = rare === 0 ? 0 : usual + unnamed === 0 ? 1 : frequencyWords.rarely;
  const unnamedShare = unnamed === 0 ? 0 : usual === 0 ? 1 - rareShare : frequencyWords.never;
  const usualShare = 1 - rareShare - unnamedShare;
  return {
    kind: "frequencies",
    frequencies: states.map((_, i) => (isUsual[i] ? usualShare / usual : isRare[i] ? rareShare / rare : unnamedShare / unnamed)),
  };
};

const distributionOfRange = (
  range: { readonly min: number | null; readonly low: number; readonly high: number; readonly max: number | null },
  kind: Exclude<AnswerKind["kind"], "states">,
  { coreTail, extremeTail, bareRangePlants }: RangeConvention,
): ScoreDistribution => {
  const { min, low, high, max } = range;
  const size = Math.max(Math.abs(low), Math.abs(high));
  const floor = kind === "count" ? 0.25 : Math.max(leastSpread * size, 1e-9);
  const made = (mode: number, sdLow: number, sdHigh: number): TwoPieceNormal => ({
    kind: "two-piece-normal",
    scale: "linear",
    mode,
    sdLow: Math.max(sdLow, floor),
    sdHigh: Math.max(sdHigh, floor),
  });
  const core: readonly QuantilePoint[] =
    low === high
      ? [{ share: 0.5, value: low }]
      : [
          { share: coreTail, value: low },
          { share: 1 - coreTail, value: high },
        ];
  const points: readonly QuantilePoint[] = [
    ...(min === null ? [] : [{ share: extremeTail, value: min }]),
    ...core,
    ...(max === null ? [] : [{ share: 1 - extremeTail, value: max }]),
  ];
  const lowest = points[0]?.value ?? low;
  const highest = points.at(-1)?.value ?? high;
  if (lowest === highest) {
    const spread = singleValueSpread[kind === "count" ? "count" : "measure"] * size;
    return made(low, spread, spread);
  }
  if (min === null && max === null && bareRangePlants !== null) {
    const sd = (high - low) / rangeWidthInSd(bareRangePlants);
    return made((low + high) / 2, sd, sd);
  }
  if (lowest > 0 && min !== null && max !== null && max - high > low - min) {
    const { mu, sigma, rss } = fitLogNormal(points);
    if (Math.sqrt(rss / points.length) <= logNormalTolerance * sigma) {
      return { kind: "two-piece-normal", scale: "log", mode: mu, sdLow: sigma, sdHigh: sigma };
    }
  }
  if (kind === "ratio" && lowest > 0) {
    const fit = fitTwoPieceNormal(points.map(({ share, value }) => ({ share, value: Math.log(value) })));
    return {
      kind: "two-piece-normal",
      scale: "log",
      mode: fit.mode,
      sdLow: Math.max(fit.sdLow, leastSpread),
      sdHigh: Math.max(fit.sdHigh, leastSpread),
    };
  }
  const fit = fitTwoPieceNormal(points);
  return made(fit.mode, fit.sdLow, fit.sdHigh);
};
