/**
 * From evidence to chances: how probable each taxon is, and that the plant is none of them. Bayes' rule over a table of
 * distributions; see docs/methods/determination.md.
 */
import { expBelow } from "../base/exp-below.js";
import type { TaxonId } from "../base/ids.js";
import type { DeterminationOptions } from "./determination-options.js";
import type { CharacterEvidence } from "./evidence-input.js";
import type { PreparedTable } from "./prepared-table.js";
import { hypothesisAt, startEvidence, type Hypothesis, type RunningEvidence } from "./running-evidence.js";

export interface Chance {
  readonly probability: number;
  /** log10 of probability / (1 - probability), exact also where the probability prints as 1; within +-1e6. */
  readonly log10Odds: number;
  /** The probability with every taxon equally likely beforehand: where it differs, the evidence has not decided. */
  readonly evenPriorProbability: number;
}

export interface Posterior {
  /** In the order of the table. */
  readonly taxa: readonly (Chance & { readonly taxonId: TaxonId })[];
  readonly noneOfThese: Chance;
  /** The most probable, and the next. Ties go to the one that stands first in the table. */
  readonly leader: Hypothesis;
  readonly runnerUp: Hypothesis;
}

/**
 * The posterior of a plant: P(t | o) = pi_t prod_j L_j(t)^w_j / sum, over all taxa and "none of these".
 * @param findings pooled evidence, one entry a character; those the table does not know are passed over
 * @throws {RangeError} if the table is empty, an option out of range or a value not finite
 */
export const posterior = (
  table: PreparedTable,
  findings: readonly CharacterEvidence[],
  options: Partial<DeterminationOptions> = {},
): Posterior => posteriorOf(gatherEvidence(table, findings, options));

/** The evidence of a plant taken in, for the posterior and for all that explains it. */
export const gatherEvidence = (
  table: PreparedTable,
  findings: readonly CharacterEvidence[],
  options: Partial<DeterminationOptions> = {},
): RunningEvidence => {
  const running = startEvidence(table, options);
  for (const finding of findings) running.answer(finding);
  return running;
};

/** The posterior of the evidence so far. */
export const posteriorOf = (running: RunningEvidence): Posterior => {
  const { table, options } = running;
  const taxonCount = table.taxonIds.length;
  const joint = running.logJoint();
  const normal = normalise(joint);
  const even = running.logEvidence();
  for (let t = 0; t < taxonCount; t += 1) even[t] = (even[t] ?? 0) + Math.log1p(-options.noneOfThese) - Math.log(taxonCount);
  even[taxonCount] = (even[taxonCount] ?? 0) + Math.log(options.noneOfThese);
  const evenNormal = normalise(even);
  const chance = (h: number): Chance => ({
    probability: normal.probability[h] ?? 0,
    log10Odds: logOdds(normal, joint, h) / Math.LN10,
    evenPriorProbability: evenNormal.probability[h] ?? 0,
  });
  return {
    taxa: table.taxonIds.map((taxonId, t) => ({ taxonId, ...chance(t) })),
    noneOfThese: chance(taxonCount),
    leader: hypothesisAt(table, normal.first),
    runnerUp: hypothesisAt(table, normal.second),
  };
};

/**
 * The chances alone, length taxonCount + 1 (the last is "none of these"): the quick way for large tables.
 * @param into where they are put; asking again and again with one array saves the memory of a new one each time
 */
export const probabilitiesOf = (running: RunningEvidence, into?: Float64Array): Float64Array => {
  const joint = running.logJoint(into);
  return normalise(joint, joint).probability;
};

export interface Normalised {
  /** Sums to 1. */
  readonly probability: Float64Array;
  /** Positions of the highest and the second highest. */
  readonly first: number;
  readonly second: number;
  /** log of the sum of all but the highest, relative to the highest. */
  readonly logRest: number;
}

/**
 * Scales log weights to sum to one.
 * @param joint finite, or -Infinity for a hypothesis without prior; at least one finite
 * @param probability where the chances are put: an array of the same length, which may be `joint` itself
 */
export const normalise = (joint: Float64Array, probability: Float64Array = new Float64Array(joint.length)): Normalised => {
  const size = joint.length;
  let first = 0;
  let second = -1;
  let high = joint[0] as number;
  let nextHigh = -Infinity;
  for (let h = 1; h < size; h += 1) {
    const value = joint[h] as number;
    if (value > high) {
      second = first;
      nextHigh = high;
      first = h;
      high = value;
    } else if (second < 0 || value > nextHigh) {
      second = h;
      nextHigh = value;
    }
  }
  const rest = expBelow(joint, high, probability, first);
  const share = 1 / (1 + rest);
  for (let h = 0; h < size; h += 1) probability[h] = (probability[h] as number) * share;
  return { probability, first, second: Math.max(second, 0), logRest: rest > 0 ? Math.log(rest) : nextHigh - high };
};

const logOdds = (normal: Normalised, joint: Float64Array, h: number): number => {
  const limit = 1e6 * Math.LN10;
  if (h === normal.first) return Math.min(limit, -normal.logRest);
  const own = (joint[h] ?? -Infinity) - (joint[normal.first] ?? 0);
  const logProbability = own - Math.log1p(Math.exp(normal.logRest));
  return Math.max(-limit, logProbability - Math.log1p(-Math.exp(logProbability)));
};
