/**
 * What an unseen character is worth: the bits of information about the taxon that looking at it is expected to give, with
 * the observer's errors, and the taxa and "none of these" weighed as the evidence now stands.
 * Source: Lindley 1956, "On a measure of the information provided by an experiment", Annals of Mathematical Statistics 27:
 * 986-1005; Shannon 1948 for the mutual information.
 */
import { integrate } from "../base/quadrature.js";
import { logAddExp } from "../base/log-space.js";
import type { CharacterId } from "../base/ids.js";
import { existenceOf, logFieldDensity, outsideFrequencies } from "./columns.js";
import { groupExponent } from "./determination-options.js";
import { blunderRate, misreadingMatrix, misreadingRate } from "./misreading.js";
import { probabilitiesOf } from "./posterior.js";
import { standing, type MeasureColumns, type PreparedCharacter, type StateColumns } from "./prepared-table.js";
import type { RunningEvidence } from "./running-evidence.js";
import { logChanceBetween, logDensityAt, type TwoPieceNormal } from "./two-piece-normal.js";

export interface ExpectedInformation {
  readonly characterId: CharacterId;
  /** Bits, >= 0, after the share of a group already heard and the exponent of the role. */
  readonly bits: number;
  /** Bits the character would give by itself. */
  readonly plainBits: number;
}

/** Measures are reckoned over the hypotheses that hold this share of the probability, and never over more than so many. */
const plausibleMass = 0.995;
const plausibleMost = 48;

/**
 * Expected information of a character. States: over every single report, through the misreading channel, and over "the
 * part is not there" where the character hangs on another. Measures: over the mean of as many values as are wanted (minN),
 * among the hypotheses that hold 99.5 % of the probability. A further character of a group of m already answered counts by
 * what the exponents leave it: (m + 1) w(m + 1) - m w(m), w the exponent of the group.
 * @returns null when the table does not have the character; 0 bits for one that never speaks
 */
export const expectedInformation = (running: RunningEvidence, id: CharacterId): ExpectedInformation | null => {
  const character = running.table.characters.get(id);
  if (character === undefined) return null;
  const { options } = running;
  if (character.role === "hybrid-check" || character.weight === 0) return { characterId: id, bits: 0, plainBits: 0 };
  const probability = probabilitiesOf(running);
  const exists = existenceOf(running.table, character, running.evidenceOf, options);
  const there = Float64Array.from(probability, (_, h) =>
    character.columns.standing[h] === standing.notApplicable ? 0 : (exists?.[h] ?? 1),
  );
  const plainBits =
    character.columns.kind === "states"
      ? statesInformation(character, character.columns, probability, there, running)
      : valuesInformation(character, character.columns, probability, there, running);
  const heard = running.answered().filter(({ character: other, evidence }) => other.id !== id && evidence.group === character.group).length;
  const left =
    (heard + 1) * groupExponent(options, character.group, heard + 1) -
    (heard === 0 ? 0 : heard * groupExponent(options, character.group, heard));
  const role = character.role === "support" ? options.supportExponent : 1;
  return { characterId: id, bits: Math.max(0, plainBits * Math.max(0, Math.min(1, left)) * role), plainBits };
};

/**
 * Mutual information, in bits, between hypothesis and outcome: sum_h p_h sum_x q_h(x) log2(q_h(x) / q(x)).
 * @param probability chances of the hypotheses, sum 1
 * @param outcomes rows of outcome chances, one row a hypothesis, each summing to 1
 */
export const informationOfOutcomes = (probability: ArrayLike<number>, outcomes: readonly ArrayLike<number>[]): number => {
  const width = outcomes[0]?.length ?? 0;
  let bits = 0;
  for (let x = 0; x < width; x += 1) {
    let mean = 0;
    for (let h = 0; h < probability.length; h += 1) mean += (probability[h] ?? 0) * (outcomes[h]?.[x] ?? 0);
    for (let h = 0; h < probability.length; h += 1) {
      const q = outcomes[h]?.[x] ?? 0;
      const p = probability[h] ?? 0;
      if (p > 0 && q > 0) bits += p * q * Math.log2(q / mean);
    }
  }
  return Math.max(0, bits);
};

export interface ValueHypothesis {
  readonly probability: number;
  readonly distribution: Omit<TwoPieceNormal, "kind">;
}

/**
 * Mutual information, in bits, between hypothesis and a measured value. Exact values: composite 16-point Gauss-Legendre
 * between the points mode and mode +- 1, 2, 4, 8 spreads of every hypothesis. Values rounded to multiples of `step`: the
 * sum over all of them.
 * @param hypotheses chances sum to 1
 * @param step > 0, or null for exact values
 */
export const informationOfValues = (hypotheses: readonly ValueHypothesis[], step: number | null = null): number => {
  const densities = hypotheses.map(
    ({ distribution }) =>
      (x: number) =>
        Math.exp(logDensityAt(distribution, x)),
  );
  const breaks = breaksOf(hypotheses.map(({ distribution }) => distribution));
  const probability = hypotheses.map((hypothesis) => hypothesis.probability);
  if (step === null)
    return Math.max(
      0,
      integrate((x) => informationAt(probability, densities, x), breaks),
    );
  const first = Math.floor((breaks[0] ?? 0) / step);
  const last = Math.ceil((breaks.at(-1) ?? 0) / step);
  const chances = hypotheses.map(
    ({ distribution }) =>
      (k: number) =>
        Math.exp(logChanceBetween(distribution, (k - 0.5) * step, (k + 0.5) * step)),
  );
  let bits = 0;
  for (let k = first; k <= last; k += 1) bits += informationAt(probability, chances, k);
  return Math.max(0, bits);
};

const informationAt = (probability: readonly number[], densities: readonly ((x: number) => number)[], x: number): number => {
  const values = densities.map((density) => density(x));
  const mean = values.reduce((sum, value, h) => sum + (probability[h] ?? 0) * value, 0);
  return values.reduce((sum, value, h) => {
    const p = probability[h] ?? 0;
    return p > 0 && value > 0 && mean > 0 ? sum + p * value * Math.log2(value / mean) : sum;
  }, 0);
};

const breaksOf = (distributions: readonly Omit<TwoPieceNormal, "kind">[]): readonly number[] => {
  const points = distributions.flatMap((d) =>
    [-8, -4, -2, -1, 0, 1, 2, 4, 8].map((k) => {
      const y = d.mode + k * (k < 0 ? d.sdLow : d.sdHigh);
      return d.scale === "log" ? Math.exp(y) : y;
    }),
  );
  return [...new Set(points)].sort((a, b) => a - b);
};

const statesInformation = (
  character: PreparedCharacter,
  columns: StateColumns,
  probability: Float64Array,
  there: Float64Array,
  running: RunningEvidence,
): number => {
  const k = columns.stateIds.length;
  const taxonCount = columns.standing.length;
  const matrix = misreadingMatrix(k, columns.ordered, misreadingRate(k, character.misreading, running.options.observer));
  const outside = outsideFrequencies(columns, running.options.background);
  const mean = new Float64Array(k + 1);
  let conditional = 0;
  const row = new Float64Array(k + 1);
  for (let h = 0; h <= taxonCount; h += 1) {
    const p = probability[h] ?? 0;
    if (p === 0) continue;
    const x = there[h] ?? 1;
    row.fill(0);
    for (let s = 0; s < k; s += 1) {
      const share = x * ((h === taxonCount ? outside[s] : columns.frequency[s * taxonCount + h]) ?? 0);
      for (let said = 0; said < k; said += 1) row[said] = (row[said] ?? 0) + share * (matrix[s * k + said] ?? 0);
    }
    row[k] = 1 - x;
    for (let said = 0; said <= k; said += 1) {
      const q = row[said] ?? 0;
      mean[said] = (mean[said] ?? 0) + p * q;
      if (q > 0) conditional += p * q * Math.log2(q);
    }
  }
  return Math.max(0, conditional - mean.reduce((sum, q) => (q > 0 ? sum + q * Math.log2(q) : sum), 0));
};

const valuesInformation = (
  character: PreparedCharacter,
  columns: MeasureColumns,
  probability: Float64Array,
  there: Float64Array,
  running: RunningEvidence,
): number => {
  const taxonCount = columns.standing.length;
  const chosen = plausible(probability);
  const mass = chosen.reduce((sum, h) => sum + (probability[h] ?? 0), 0);
  const scored = chosen.filter((h) => h < taxonCount && columns.standing[h] === standing.known);
  if (scored.length === 0 || mass <= 0) return 0;
  const blunder = blunderRate(running.options, character.misreading);
  const spread = running.options.withinPlantSpread;
  const shapes = new Map(
    scored.map((h) => {
      const isLog = columns.isLog[h] === 1;
      const mode = columns.mode[h] ?? 0;
      const own = (isLog ? spread : spread * mode) ** 2 / character.minN;
      const widen = (sd: number): number => Math.sqrt(sd * sd + own);
      return [
        h,
        {
          scale: isLog ? ("log" as const) : ("linear" as const),
          mode,
          sdLow: widen(columns.sdLow[h] ?? 1),
          sdHigh: widen(columns.sdHigh[h] ?? 1),
        },
      ] as const;
    }),
  );
  const { low, high } = columns.field;
  const width = Math.max(high - low, 1e-9 * Math.max(1, Math.abs(low)));
  const sides = [1, 2, 4, 8, 16, 32].flatMap((k) => [low - width - k * width, high + width + k * width]);
  const breaks = [...new Set([...breaksOf([...shapes.values()]), ...sides, low - width, high + width])].sort((a, b) => a - b);
  const p = chosen.map((h) => (probability[h] ?? 0) / mass);
  const table = running.options.background === "table" ? 1 : running.options.background === "even" ? 0 : 0.5;
  /** Values of every chosen hypothesis at x: scored taxa, then the marginal for unscored ones and the background for none. */
  const at = (x: number): readonly number[] => {
    const flat = Math.exp(logFieldDensity(columns.field, x));
    let sum = 0;
    const own = new Map<number, number>();
    for (const [h, shape] of shapes) {
      const value =
        blunder > 0
          ? Math.exp(logAddExp(Math.log1p(-blunder) + logDensityAt(shape, x), Math.log(blunder) + Math.log(flat)))
          : Math.exp(logDensityAt(shape, x));
      own.set(h, value);
      sum += value;
    }
    const marginal = sum / shapes.size;
    return chosen.map((h) => (there[h] ?? 1) * (own.get(h) ?? (h === taxonCount ? table * marginal + (1 - table) * flat : marginal)));
  };
  const seen = integrate((x) => {
    const values = at(x);
    const mean = values.reduce((sum, value, i) => sum + (p[i] ?? 0) * value, 0);
    return values.reduce((sum, value, i) => (value > 0 && mean > 0 ? sum + (p[i] ?? 0) * value * Math.log2(value / mean) : sum), 0);
  }, breaks);
  const missing = chosen.map((h) => 1 - (there[h] ?? 1));
  const meanMissing = missing.reduce((sum, share, i) => sum + (p[i] ?? 0) * share, 0);
  const notThere = missing.reduce((sum, share, i) => (share > 0 ? sum + (p[i] ?? 0) * share * Math.log2(share / meanMissing) : sum), 0);
  return Math.max(0, seen + notThere);
};

/** Positions of the most probable hypotheses that together hold the plausible mass. */
const plausible = (probability: Float64Array): readonly number[] => {
  const order = Array.from(probability.keys()).sort((x, y) => (probability[y] ?? 0) - (probability[x] ?? 0) || x - y);
  const chosen: number[] = [];
  let mass = 0;
  for (const h of order) {
    if (chosen.length >= plausibleMost || mass >= plausibleMass) break;
    chosen.push(h);
    mass += probability[h] ?? 0;
  }
  return chosen;
};
