/**
 * Does the plant look like the taxon at all? How often a plant of that taxon looks as unusual as this one, or more so, in
 * the same characters. The posterior only compares the taxa of the table; this asks of one taxon by itself.
 */
import { randomSource, type RandomSource } from "../base/random.js";
import { blunderRate, misreadingMatrix, misreadingRate } from "./misreading.js";
import { measuredLogLikelihood } from "./columns.js";
import { measuredSummary, type MeasuredSummary } from "./measured-summary.js";
import { standing, type MeasureColumns, type StateColumns } from "./prepared-table.js";
import { hypothesisIndex, type AnsweredCharacter, type RunningEvidence } from "./running-evidence.js";
import { normalQuantile } from "../base/normal.js";
import type { TaxonId } from "../base/ids.js";

export interface Typicality {
  /** P(L(X) <= L(seen) | taxon), 0-1; below 0.01 the taxon should not be named whatever the posterior. */
  readonly value: number;
  readonly method: "exact" | "drawn";
  /** How many characters it rests on. */
  readonly characters: number;
}

/** The largest list of distinct log likelihoods that is carried exactly. */
const exactLimit = 200_000;
/** Log likelihoods closer than this are one. */
const sameLog = 1e-9;

/**
 * Typicality (atypicality index) of a taxon: the chance of a likelihood as low as the one seen or lower, over the characters
 * answered that are scored for the taxon, with the exponents of groups; support characters are left out. Reports are drawn
 * through the observer's channel as single sure reports; several states seen, or "between two", count as the likeliest of
 * them, so doubt never makes a plant look atypical. Characters are drawn independently: correlated ones make the value too
 * extreme in both directions, which the exponents only soften.
 *
 * Exact by convolution of the distributions of log likelihoods when all characters are states and the list of distinct
 * sums stays below 200,000; else by `draws` seeded draws.
 * Source: Aitchison, Habbema & Kay 1977, "A critical comparison of two methods of statistical discrimination", Applied
 * Statistics 26: 15-25 (the index; from memory).
 * @returns null when no answered character is scored for the taxon
 * @throws {RangeError} if the table has no such taxon or draws < 100
 */
export const typicality = (
  running: RunningEvidence,
  taxonId: TaxonId,
  { seed = 1, draws = 4000 }: { readonly seed?: number; readonly draws?: number } = {},
): Typicality | null => {
  if (!(draws >= 100)) throw new RangeError(`typicality requires at least 100 draws: got ${draws}`);
  const t = hypothesisIndex(running.table, taxonId);
  const parts = running
    .answered()
    .filter(({ character }) => character.role === "taxa" && character.columns.standing[t] === standing.known)
    .map((answered) => partOf(answered, t, running));
  if (parts.length === 0) return null;
  const seen = parts.reduce((sum, part) => sum + part.seen, 0);
  const atoms = parts.map((part) => part.atoms);
  const exact = atoms.every((list) => list !== null) ? convolve(atoms.filter((list) => list !== null)) : null;
  if (exact !== null) {
    const value = exact.reduce((sum, atom) => sum + (atom.log <= seen + sameLog ? atom.chance : 0), 0);
    return { value: Math.min(1, value), method: "exact", characters: parts.length };
  }
  const random = randomSource(seed);
  let below = 0;
  for (let i = 0; i < draws; i += 1) {
    let sum = 0;
    for (const part of parts) sum += part.draw(random);
    if (sum <= seen + sameLog) below += 1;
  }
  return { value: below / draws, method: "drawn", characters: parts.length };
};

interface Atom {
  readonly log: number;
  readonly chance: number;
}

interface Part {
  /** Log likelihood of what was seen, with the exponent of its group. */
  readonly seen: number;
  /** All it could have been; null for measures. */
  readonly atoms: readonly Atom[] | null;
  readonly draw: (random: RandomSource) => number;
}

const partOf = ({ character, evidence, exponent }: AnsweredCharacter, t: number, running: RunningEvidence): Part => {
  const { columns } = character;
  if (columns.kind === "states") {
    const rate = misreadingRate(columns.stateIds.length, character.misreading, running.options.observer);
    const chances = reportChances(columns, t, rate);
    const atoms = Array.from(chances, (chance) => ({ log: exponent * Math.log(chance), chance }));
    const states = evidence.states.length > 0 || columns.absence < 0 ? evidence.states : [columns.stateIds[columns.absence]];
    const said = states.map((state) => columns.stateIds.findIndex((id) => id === state)).filter((s) => s >= 0);
    return {
      seen: Math.max(...said.map((s) => atoms[s]?.log ?? 0)),
      atoms,
      draw: (random) => {
        let left = random.uniform();
        for (const atom of atoms) {
          left -= atom.chance;
          if (left < 0) return atom.log;
        }
        return atoms.at(-1)?.log ?? 0;
      },
    };
  }
  const blunder = blunderRate(running.options, character.misreading);
  const summary = measuredSummary(evidence, columns.isCount, running.options);
  const from: MeasuredSummary = summary ?? { mean: 0, variance: 0, halfStep: 0 };
  return {
    seen: exponent * measuredLogLikelihood(columns, t, from, blunder),
    atoms: null,
    draw: (random) => exponent * measuredLogLikelihood(columns, t, { ...from, mean: drawnMean(columns, t, from, random) }, blunder),
  };
};

/** Chance of each single report in taxon t. */
const reportChances = (columns: StateColumns, t: number, rate: number): Float64Array => {
  const k = columns.stateIds.length;
  const taxonCount = columns.standing.length;
  const matrix = misreadingMatrix(k, columns.ordered, rate);
  return Float64Array.from({ length: k }, (_, said) => {
    let sum = 0;
    for (let s = 0; s < k; s += 1) sum += (columns.frequency[s * taxonCount + t] ?? 0) * (matrix[s * k + said] ?? 0);
    return sum;
  });
};

/** A mean as a plant of the taxon would give it, without blunder, rounded to the step of the evidence. */
const drawnMean = (columns: MeasureColumns, t: number, { variance, halfStep, mean }: MeasuredSummary, random: RandomSource): number => {
  const isLog = columns.isLog[t] === 1;
  const extra = isLog ? variance / Math.max(mean * mean, 1e-300) : variance;
  const low = Math.sqrt((columns.sdLow[t] ?? 1) ** 2 + extra);
  const high = Math.sqrt((columns.sdHigh[t] ?? 1) ** 2 + extra);
  const isBelow = random.uniform() < low / (low + high);
  const distance = Math.abs(normalQuantile(0.5 + random.uniform() / 2)) * (isBelow ? -low : high);
  const y = (columns.mode[t] ?? 0) + Math.max(-40 * low, Math.min(40 * high, distance));
  const x = isLog ? Math.exp(Math.min(700, y)) : y;
  return halfStep > 0 ? Math.round(x / (2 * halfStep)) * 2 * halfStep : x;
};

/** Distribution of the sum of independent discrete values; null when it grows too long. */
const convolve = (lists: readonly (readonly Atom[])[]): readonly Atom[] | null => {
  let sum: readonly Atom[] = [{ log: 0, chance: 1 }];
  for (const list of lists) {
    if (sum.length * list.length > exactLimit * 4) return null;
    const all = sum.flatMap((a) => list.map((b) => ({ log: a.log + b.log, chance: a.chance * b.chance })));
    all.sort((a, b) => a.log - b.log);
    const merged: { log: number; chance: number }[] = [];
    for (const atom of all) {
      const last = merged.at(-1);
      if (last !== undefined && atom.log - last.log < sameLog) last.chance += atom.chance;
      else merged.push({ ...atom });
    }
    if (merged.length > exactLimit) return null;
    sum = merged;
  }
  return sum;
};
