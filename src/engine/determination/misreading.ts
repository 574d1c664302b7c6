/**
 * The observer between the plant and the note: the chance that a state is reported, given the state that is there.
 * Without it one wrong look would remove the right taxon for good.
 */

import { misreadingRates, type DeterminationOptions, type ObserverClass } from "./determination-options.js";

/** Each further step along an ordered row of states is this much less likely to be taken for the true one. No source. */
const stepDecay = 0.25;

/**
 * Chance of a wrong report: what the character itself says, else the rate of the observer plus 0.05 for each state
 * beyond three (more states, more errors: Wäldchen et al. 2023; the slope is common practice), at most 0.5.
 */
export const misreadingRate = (stateCount: number, own: number | null, observer: ObserverClass): number =>
  own ?? Math.min(0.5, misreadingRates[observer] + 0.05 * Math.max(0, stateCount - 3));

/** Chance that a measured series is a blunder: the option, else the character's own rate, else that of the observer. */
export const blunderRate = (options: DeterminationOptions, own: number | null): number =>
  options.blunder ?? own ?? misreadingRates[options.observer];

/**
 * P(reported | true) as a square in row order: entry [true * k + reported]; rows sum to 1.
 * Unordered: 1 - e on the diagonal, e / (k - 1) elsewhere. Ordered: the error e goes to neighbours, falling by a quarter
 * with each step away. With one state there is nothing to misread.
 * @param rate e, 0 to 0.5
 */
export const misreadingMatrix = (stateCount: number, ordered: boolean, rate: number): Float64Array => {
  const k = stateCount;
  const matrix = new Float64Array(k * k);
  for (let truth = 0; truth < k; truth += 1) {
    let wrong = 0;
    for (let said = 0; said < k; said += 1) {
      if (said === truth) continue;
      const share = ordered ? stepDecay ** (Math.abs(said - truth) - 1) : 1;
      matrix[truth * k + said] = share;
      wrong += share;
    }
    for (let said = 0; said < k; said += 1) {
      const at = truth * k + said;
      matrix[at] = said === truth ? (wrong > 0 ? 1 - rate : 1) : ((matrix[at] ?? 0) / wrong) * rate;
    }
  }
  return matrix;
};
