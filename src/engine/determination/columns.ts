/**
 * What one answered character says of every taxon and of "none of these": a column of log likelihoods. They are natural
 * logarithms and finite: nothing is ever ruled out for good.
 */
import { logAddExp, logSumExp } from "../base/log-space.js";
import type { CharacterId } from "../base/ids.js";
import type { CharacterEvidence } from "./evidence-input.js";
import type { DeterminationOptions } from "./determination-options.js";
import { spreadOut, type EvidenceColumn } from "./evidence-column.js";
import { measuredSummary, type MeasuredSummary } from "./measured-summary.js";
import { blunderRate, misreadingMatrix, misreadingRate } from "./misreading.js";
import { standing, type MeasureColumns, type PreparedCharacter, type PreparedTable, type StateColumns } from "./prepared-table.js";
import { logChanceBetween, logDensityAt } from "./two-piece-normal.js";

/** The evidence of a character, if it was answered. */
export type EvidenceLookup = (id: CharacterId) => CharacterEvidence | undefined;

/** No single character may say less than this (natural logarithm); keeps every sum finite. */
export const leastLogLikelihood = -1e6;

/**
 * The column of one piece of evidence, a fresh one at each call, or null when it says nothing: a character the table has not,
 * no known state, no value, absence of something whose absence is no state, or no taxon scored.
 *
 * States: L(t) = sum_s P(s | t) P(report | s). Measured: L(t) = (1 - e) f_t(mean) + e u(mean), u flat over the field of the
 * character with falling sides. A taxon without a score gets the mean over the scored ones. Where the part exists only
 * under some states of another character, with chance x(t) given what was reported of that one:
 * L(t) = x L(t | it exists) + (1 - x) e b, b the background: an answer about a missing part is a misreading, not a proof.
 *
 * Cost: O(kinds x states) where taxa come in kinds and the part exists in all of them, else O(taxa x states).
 */
export const logLikelihoodColumn = (
  table: PreparedTable,
  evidence: CharacterEvidence,
  evidenceOf: EvidenceLookup,
  options: DeterminationOptions,
): EvidenceColumn | null => {
  const character = table.characters.get(evidence.characterId);
  if (character === undefined) return null;
  const { columns } = character;
  const plain =
    columns.kind === "states" ? statesColumn(character, columns, evidence, options) : measuredColumn(character, columns, evidence, options);
  if (plain === null) return null;
  const column = throughExistence(table, character, plain, evidenceOf, options);
  const { values } = column;
  for (let i = 0; i < values.length; i += 1) if (!((values[i] as number) >= leastLogLikelihood)) values[i] = leastLogLikelihood;
  return column;
};

/**
 * P(report | true state) for each report the evidence stands for: one row for one state or for "between two" (their mean);
 * several rows for several states that all occur. "Fairly sure" keeps a share of the row and levels the rest. Absence in n
 * organs is overlooked with chance e^m, m = n / (1 + (n - 1) r): many organs of one plant are at most a few independent looks.
 */
export const reportRows = (
  character: Pick<PreparedCharacter, "misreading">,
  columns: StateColumns,
  evidence: CharacterEvidence,
  options: DeterminationOptions,
): readonly Float64Array[] => {
  const k = columns.stateIds.length;
  const rate = misreadingRate(k, character.misreading, options.observer);
  const matrix = misreadingMatrix(k, columns.ordered, rate);
  const named = evidence.states.map((state) => columns.stateIds.indexOf(state)).filter((s) => s >= 0);
  const said = [...new Set(evidence.kind === "absent" && evidence.states.length === 0 && columns.absence >= 0 ? [columns.absence] : named)];
  said.sort((a, b) => a - b);
  const rows = said.map((report) => Float64Array.from({ length: k }, (_, truth) => matrix[truth * k + report] ?? 0));
  if (evidence.kind === "absent") {
    const n = evidence.n ?? 1;
    const looks = n / (1 + (n - 1) * options.absenceCorrelation);
    rows.forEach((row, i) => {
      for (let truth = 0; truth < k; truth += 1) if (truth !== said[i]) row[truth] = (row[truth] ?? 0) * rate ** (looks - 1);
    });
    return rows;
  }
  if (evidence.sureness === "between-two" && rows.length > 1) {
    return [Float64Array.from({ length: k }, (_, s) => rows.reduce((sum, row) => sum + (row[s] ?? 0), 0) / rows.length)];
  }
  if (evidence.sureness !== "sure") {
    for (const row of rows) {
      const level = row.reduce((sum, share) => sum + share, 0) / k;
      for (let s = 0; s < k; s += 1) row[s] = options.fairlyShare * (row[s] ?? 0) + (1 - options.fairlyShare) * level;
    }
  }
  return rows;
};

/** Frequencies of states in a plant outside the table. */
export const outsideFrequencies = (columns: StateColumns, background: DeterminationOptions["background"]): Float64Array => {
  const table = background === "table" ? 1 : background === "even" ? 0 : 0.5;
  const even = (1 - table) / columns.stateIds.length;
  return columns.background.map((share) => table * share + even);
};

/**
 * log density of the field of a character at x, or log chance of the interval of half-width `halfStep` around it: flat
 * between the outermost points of the scored taxa, widened by their distance on either side, then falling by 1/e per that
 * distance; at most 700 units down.
 */
export const logFieldDensity = ({ low, high }: MeasureColumns["field"], x: number, halfStep = 0): number => {
  const width = Math.max(high - low, 1e-9 * Math.max(1, Math.abs(low)));
  const outside = Math.max(low - width - x, x - high - width, 0);
  return -Math.log(5 * width) - Math.min(outside / width, 700) + (halfStep > 0 ? Math.log(2 * halfStep) : 0);
};

/** log likelihood of a measured mean in one scored taxon, with the chance of a blunder. */
export const measuredLogLikelihood = (columns: MeasureColumns, t: number, seen: MeasuredSummary, blunder: number): number => {
  const shape = {
    scale: columns.isLog[t] === 1 ? ("log" as const) : ("linear" as const),
    mode: columns.mode[t] ?? 0,
    sdLow: columns.sdLow[t] ?? 1,
    sdHigh: columns.sdHigh[t] ?? 1,
  };
  const from = seen.mean - seen.halfStep;
  const to = seen.mean + seen.halfStep;
  const own = from < to ? logChanceBetween(shape, from, to, seen.variance) : logDensityAt(shape, seen.mean, seen.variance);
  if (blunder === 0) return own;
  return logAddExp(Math.log1p(-blunder) + own, Math.log(blunder) + logFieldDensity(columns.field, seen.mean, seen.halfStep));
};

/**
 * Chance that the part of a dependent character exists, for every taxon and "none of these", given what was reported of
 * the character it depends on; null when it depends on none, or on one that the table has not.
 */
export const existenceOf = (
  table: PreparedTable,
  character: PreparedCharacter,
  evidenceOf: EvidenceLookup,
  options: DeterminationOptions,
): Float64Array | null => {
  if (character.onlyIf === null) return null;
  const parent = table.characters.get(character.onlyIf.character);
  if (parent === undefined || parent.columns.kind !== "states") return null;
  const { columns } = parent;
  const { states } = character.onlyIf;
  const allows = columns.stateIds.map((state) => states.includes(state));
  const report = evidenceOf(parent.id);
  const rows = report === undefined ? [] : reportRows(parent, columns, report, options);
  const weight = allows.map((_, s) =>
    rows.length === 0 ? 1 : Math.exp(rows.reduce((sum, row) => sum + Math.log(row[s] ?? 0), 0) / rows.length),
  );
  const taxonCount = table.taxonIds.length;
  const exists = new Float64Array(taxonCount + 1);
  const outside = outsideFrequencies(columns, options.background);
  for (let h = 0; h <= taxonCount; h += 1) {
    let yes = 0;
    let all = 0;
    for (let s = 0; s < allows.length; s += 1) {
      const share = (h === taxonCount ? outside[s] : columns.frequency[s * taxonCount + h]) ?? 0;
      const joint = share * (weight[s] ?? 0);
      all += joint;
      if (allows[s] === true) yes += joint;
    }
    exists[h] = all > 0 ? yes / all : 0;
  }
  const above = existenceOf(table, parent, evidenceOf, options);
  if (above !== null) for (let h = 0; h <= taxonCount; h += 1) exists[h] = (exists[h] ?? 0) * (above[h] ?? 0);
  return exists;
};

const statesColumn = (
  character: PreparedCharacter,
  columns: StateColumns,
  evidence: CharacterEvidence,
  options: DeterminationOptions,
): EvidenceColumn | null => {
  if (evidence.kind === "measured") return null;
  const rows = reportRows(character, columns, evidence, options);
  if (rows.length === 0) return null;
  const taxonCount = columns.standing.length;
  const outside = outsideFrequencies(columns, options.background);
  if (columns.kinds !== null) {
    const { ofTaxon, example } = columns.kinds;
    const values = new Float64Array(example.length + 1);
    example.forEach((t, kind) => (values[kind] = meanLog(rows, (s) => columns.frequency[s * taxonCount + t] ?? 0)));
    values[example.length] = meanLog(rows, (s) => outside[s] ?? 0);
    return { values, kindOfTaxon: ofTaxon };
  }
  const column = new Float64Array(taxonCount + 1);
  const likelihood = rows.length === 1 ? column : new Float64Array(taxonCount + 1);
  for (const row of rows) {
    sumOverStates(columns.frequency, row, likelihood, taxonCount);
    let none = 0;
    for (let s = 0; s < row.length; s += 1) none += (outside[s] ?? 0) * (row[s] ?? 0);
    likelihood[taxonCount] = none;
    if (rows.length === 1) for (let h = 0; h <= taxonCount; h += 1) column[h] = Math.log(column[h] as number);
    else for (let h = 0; h <= taxonCount; h += 1) column[h] = (column[h] as number) + Math.log(likelihood[h] as number) / rows.length;
  }
  return { values: column, kindOfTaxon: null };
};

/** Mean over the reports of the log likelihood of one set of frequencies. */
const meanLog = (rows: readonly Float64Array[], frequencyOf: (state: number) => number): number =>
  rows.reduce((sum, row) => sum + Math.log(row.reduce((total, share, s) => total + share * frequencyOf(s), 0)) / rows.length, 0);

/**
 * likelihood[t] = sum over states of frequency times report: the inner loop of a look, so indices are trusted and four
 * states are taken in one pass, which halves the traffic to memory.
 */
const sumOverStates = (frequency: Float64Array | Float32Array, row: Float64Array, likelihood: Float64Array, taxonCount: number): void => {
  for (let s = 0; s < row.length; s += 4) {
    const [a, b, c, d] = [0, 1, 2, 3].map((k) => row[s + k] ?? 0) as [number, number, number, number];
    const atA = s * taxonCount;
    const last = (row.length - 1) * taxonCount;
    const atB = Math.min(atA + taxonCount, last);
    const atC = Math.min(atA + 2 * taxonCount, last);
    const atD = Math.min(atA + 3 * taxonCount, last);
    for (let t = 0; t < taxonCount; t += 1) {
      const four =
        (frequency[atA + t] as number) * a +
        (frequency[atB + t] as number) * b +
        (frequency[atC + t] as number) * c +
        (frequency[atD + t] as number) * d;
      likelihood[t] = s === 0 ? four : (likelihood[t] as number) + four;
    }
  }
};

const measuredColumn = (
  character: PreparedCharacter,
  columns: MeasureColumns,
  evidence: CharacterEvidence,
  options: DeterminationOptions,
): EvidenceColumn | null => {
  if (evidence.kind !== "measured") return null;
  const seen = measuredSummary(evidence, columns.isCount, options);
  if (seen === null) return null;
  const taxonCount = columns.standing.length;
  const blunder = blunderRate(options, character.misreading);
  const column = new Float64Array(taxonCount + 1);
  const known = new Float64Array(taxonCount).fill(-Infinity);
  let count = 0;
  for (let t = 0; t < taxonCount; t += 1) {
    if (columns.standing[t] !== standing.known) continue;
    const value = measuredLogLikelihood(columns, t, seen, blunder);
    column[t] = value;
    known[t] = value;
    count += 1;
  }
  if (count === 0) return null;
  const marginal = logSumExp(known) - Math.log(count);
  for (let t = 0; t < taxonCount; t += 1) if (columns.standing[t] !== standing.known) column[t] = marginal;
  const flat = logFieldDensity(columns.field, seen.mean, seen.halfStep);
  const { background } = options;
  column[taxonCount] = background === "table" ? marginal : background === "even" ? flat : logAddExp(marginal, flat) - Math.LN2;
  return { values: column, kindOfTaxon: null };
};

const throughExistence = (
  table: PreparedTable,
  character: PreparedCharacter,
  plain: EvidenceColumn,
  evidenceOf: EvidenceLookup,
  options: DeterminationOptions,
): EvidenceColumn => {
  const { columns } = character;
  const exists = existenceOf(table, character, evidenceOf, options);
  const taxonCount = table.taxonIds.length;
  if (exists === null && !table.withMissingParts.has(character.id)) return plain;
  const column = spreadOut(plain);
  const states = columns.kind === "states" ? columns.stateIds.length : 1;
  const error =
    columns.kind === "states" ? misreadingRate(states, character.misreading, options.observer) : blunderRate(options, character.misreading);
  const slip = Math.log(Math.max(error, 1e-6)) + (column[taxonCount] ?? 0);
  for (let h = 0; h <= taxonCount; h += 1) {
    const x = h < taxonCount && columns.standing[h] === standing.notApplicable ? 0 : (exists?.[h] ?? 1);
    if (x < 1) column[h] = logAddExp(Math.log(x) + (column[h] ?? 0), Math.log1p(-x) + slip);
  }
  return { values: column, kindOfTaxon: null };
};
