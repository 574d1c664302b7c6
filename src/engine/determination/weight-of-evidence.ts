/**
 * Why one taxon rather than another: the weight of evidence of every character and group, in decibans. The weights and the
 * prior add up to the posterior log odds; no approximation is involved.
 * Source: Good 1950, Probability and the Weighing of Evidence, chapter 6. Ten decibans are a factor of ten in the odds.
 */
import type { CharacterId } from "../base/ids.js";
import { hypothesisIndex, type Hypothesis, type RunningEvidence } from "./running-evidence.js";

export interface CharacterWeight {
  readonly characterId: CharacterId;
  /** For a against b; positive = for a. After the exponent of the group and of the role. */
  readonly decibans: number;
}

export interface GroupWeight {
  readonly group: string;
  readonly decibans: number;
  /** Heaviest first. */
  readonly characters: readonly CharacterWeight[];
}

export interface WeightOfEvidence {
  readonly a: Hypothesis;
  readonly b: Hypothesis;
  readonly prior: number;
  /** Heaviest first, whichever way they point. */
  readonly groups: readonly GroupWeight[];
  /** prior + all groups = 10 log10 of the posterior odds of a against b. */
  readonly total: number;
}

/**
 * A likelihood ratio (or odds) in decibans: 10 log10.
 * @throws {RangeError} if the ratio is not positive
 * @example
 * ```ts
 * decibans(10); // => 10
 * ```
 */
export const decibans = (ratio: number): number => {
  if (!(ratio > 0)) throw new RangeError(`decibans requires a ratio > 0: got ${ratio}`);
  return 10 * Math.log10(ratio);
};

/** A difference of natural logarithms in decibans. */
export const decibansOfLog = (difference: number): number => (10 / Math.LN10) * difference;

/**
 * Weights for a against b. A prior of zero for "none of these" makes its prior term infinite; ask only about hypotheses
 * that have a prior.
 * @throws {RangeError} if a or b is not a taxon of the table
 */
export const weightOfEvidence = (running: RunningEvidence, a: Hypothesis, b: Hypothesis): WeightOfEvidence => {
  const atA = hypothesisIndex(running.table, a);
  const atB = hypothesisIndex(running.table, b);
  const byGroup = new Map<string, CharacterWeight[]>();
  for (const { character, evidence, logLikelihoodAt, exponent } of running.answered()) {
    const list = byGroup.get(evidence.group) ?? [];
    list.push({ characterId: character.id, decibans: exponent * decibansOfLog(logLikelihoodAt(atA) - logLikelihoodAt(atB)) });
    byGroup.set(evidence.group, list);
  }
  const groups = [...byGroup].map(([group, characters]) => ({
    group,
    decibans: characters.reduce((sum, character) => sum + character.decibans, 0),
    characters: [...characters].sort(heaviestFirst),
  }));
  const prior = decibansOfLog((running.logPrior[atA] ?? 0) - (running.logPrior[atB] ?? 0));
  return {
    a,
    b,
    prior,
    groups: [...groups].sort((x, y) => heaviestFirst(x, y) || (x.group < y.group ? -1 : 1)),
    total: prior + groups.reduce((sum, group) => sum + group.decibans, 0),
  };
};

const heaviestFirst = (x: { readonly decibans: number }, y: { readonly decibans: number }): number =>
  Math.abs(y.decibans) - Math.abs(x.decibans);
