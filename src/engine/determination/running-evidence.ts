/**
 * Evidence of one plant as it comes in and is taken back, with the sums over characters kept for every taxon.
 *
 * Every sum is exact, so the order of answers cannot matter and taking an answer back restores the very bits: what a group
 * of characters says of a taxon is cut into a whole number of 2^-20 and a whole number of 2^-60, and each part is added up
 * by itself. Sums of such whole numbers below 2^53 steps are exact in double precision (a long accumulator of two limbs,
 * after Kulisch & Miranker 1981, Computer Arithmetic in Theory and Practice). What is cut off is below 2^-61 a group.
 */
import type { CharacterId, TaxonId } from "../base/ids.js";
import { logLikelihoodColumn } from "./columns.js";
import { determinationOptions, groupExponent, type DeterminationOptions } from "./determination-options.js";
import { spreadOut, valueAt, type EvidenceColumn } from "./evidence-column.js";
import type { CharacterEvidence } from "./evidence-input.js";
import type { PreparedCharacter, PreparedTable } from "./prepared-table.js";

/** A taxon of the table, or that the plant is none of them. */
export type Hypothesis = TaxonId | "none-of-these";

export interface AnsweredCharacter {
  readonly character: PreparedCharacter;
  readonly evidence: CharacterEvidence;
  /** Log likelihood as it is at a position of the hypotheses; for support characters after the limit on what they may say. */
  readonly logLikelihoodAt: (index: number) => number;
  /** What is added up is the log likelihood times this. */
  readonly exponent: number;
}

export interface RunningEvidence {
  readonly table: PreparedTable;
  readonly options: DeterminationOptions;
  /** Log prior, length taxonCount + 1; sums to 1 as chances. */
  readonly logPrior: Float64Array;
  /**
   * Takes in the evidence of a character, in place of what stood there before. O(taxa x characters of the group); for a
   * character alone in its group, with kinds of taxa, two additions a taxon.
   * @returns false when it says nothing: not in the table, nothing to tell, or a character that never speaks
   */
  readonly answer: (evidence: CharacterEvidence) => boolean;
  /** Takes an answer back. @returns false when there was none */
  readonly takeBack: (id: CharacterId) => boolean;
  /** What was answered and speaks, by character id. */
  readonly answered: () => readonly AnsweredCharacter[];
  readonly evidenceOf: (id: CharacterId) => CharacterEvidence | undefined;
  /** Log prior plus all evidence, not scaled to sum to one; in the array given, or a fresh one, of length taxonCount + 1. */
  readonly logJoint: (into?: Float64Array) => Float64Array;
  /** Log evidence alone, a fresh array. */
  readonly logEvidence: () => Float64Array;
}

/**
 * Begins with the prior and no evidence.
 * @throws {RangeError} if the table has no taxon or an option is out of range
 */
export const startEvidence = (table: PreparedTable, given: Partial<DeterminationOptions> = {}): RunningEvidence => {
  const options = determinationOptions(given);
  const size = table.taxonIds.length + 1;
  if (size === 1) throw new RangeError("startEvidence requires a table with at least one taxon");
  const logPrior = logPriorOf(table, options);
  const coarse = new Float64Array(size);
  const fine = new Float64Array(size);
  /** All evidence by character, also what does not speak: a silent character can still say whether a part exists. */
  const evidence = new Map<CharacterId, CharacterEvidence>();
  const columns = new Map<CharacterId, EvidenceColumn>();
  /** What each group has added to the sums. */
  const added = new Map<string, EvidenceColumn>();
  const dependents = dependentsOf(table);
  const evidenceOf = (id: CharacterId): CharacterEvidence | undefined => evidence.get(id);

  const membersOf = (group: string): readonly CharacterId[] => [...columns.keys()].filter((id) => evidence.get(id)?.group === group).sort();

  const roleExponent = (character: PreparedCharacter): number =>
    character.role === "hybrid-check" || character.weight === 0 ? 0 : character.role === "support" ? options.supportExponent : 1;

  const refreshColumn = (id: CharacterId): void => {
    const character = table.characters.get(id);
    const seen = evidence.get(id);
    const column =
      character === undefined || seen === undefined || roleExponent(character) === 0
        ? null
        : logLikelihoodColumn(table, seen, evidenceOf, options);
    if (column === null || character === undefined) {
      columns.delete(id);
      return;
    }
    if (character.role === "support") limitColumn(column.values, (options.supportLimitDecibans * Math.LN10) / 10 / roleExponent(character));
    columns.set(id, column);
  };

  const refreshGroup = (group: string): void => {
    const before = added.get(group);
    if (before !== undefined) addExactly(coarse, fine, before, -1);
    const members = membersOf(group);
    if (members.length === 0) {
      added.delete(group);
      return;
    }
    const shared = groupExponent(options, group, members.length);
    const parts = members.flatMap((id) => {
      const [column, character] = [columns.get(id), table.characters.get(id)];
      return column === undefined || character === undefined ? [] : [{ column, exponent: shared * roleExponent(character) }];
    });
    const now = sumOfColumns(parts, size);
    added.set(group, now);
    addExactly(coarse, fine, now, 1);
  };

  /** Recomputes a character and all that hang on it, then the groups concerned. */
  const refresh = (id: CharacterId, groups: Set<string>): void => {
    for (const changed of [id, ...(dependents.get(id) ?? [])]) {
      const group = evidence.get(changed)?.group;
      if (group !== undefined) groups.add(group);
      refreshColumn(changed);
    }
    for (const group of groups) refreshGroup(group);
  };

  return {
    table,
    options,
    logPrior,
    evidenceOf,
    answer: (seen) => {
      const groups = new Set<string>();
      const before = evidence.get(seen.characterId);
      if (before !== undefined) groups.add(before.group);
      evidence.set(seen.characterId, seen);
      refresh(seen.characterId, groups);
      return columns.has(seen.characterId);
    },
    takeBack: (id) => {
      const before = evidence.get(id);
      if (before === undefined) return false;
      evidence.delete(id);
      refresh(id, new Set([before.group]));
      return true;
    },
    answered: () =>
      [...columns.keys()].sort().flatMap((id) => {
        const character = table.characters.get(id);
        const seen = evidence.get(id);
        const column = columns.get(id);
        if (character === undefined || seen === undefined || column === undefined) return [];
        const exponent = groupExponent(options, seen.group, membersOf(seen.group).length) * roleExponent(character);
        return [{ character, evidence: seen, logLikelihoodAt: (index) => valueAt(column, index), exponent }];
      }),
    logJoint: (joint = new Float64Array(size)) => {
      for (let h = 0; h < size; h += 1) joint[h] = (logPrior[h] as number) + ((coarse[h] as number) + (fine[h] as number));
      return joint;
    },
    logEvidence: () => {
      const sum = new Float64Array(size);
      for (let h = 0; h < size; h += 1) sum[h] = (coarse[h] as number) + (fine[h] as number);
      return sum;
    },
  };
};

/** Position of a hypothesis in every column. @throws {RangeError} if the table has no such taxon */
export const hypothesisIndex = (table: PreparedTable, hypothesis: Hypothesis): number => {
  if (hypothesis === "none-of-these") return table.taxonIds.length;
  const at = table.taxonIndex.get(hypothesis);
  if (at === undefined) throw new RangeError(`hypothesisIndex requires a taxon of the table: got ${hypothesis}`);
  return at;
};

/** The hypothesis at a position of a column. */
export const hypothesisAt = (table: PreparedTable, index: number): Hypothesis => table.taxonIds[index] ?? "none-of-these";

/** Even over expected taxa, less for those out of range, or as given; never zero, so that no prior removes a taxon. */
const logPriorOf = (table: PreparedTable, options: DeterminationOptions): Float64Array => {
  const weights = table.taxonIds.map((id, t) => {
    const own = options.priors === null ? 1 : (options.priors[id] ?? 1);
    if (!(own >= 0 && Number.isFinite(own))) throw new RangeError(`startEvidence requires prior weights >= 0: got ${own} for ${id}`);
    return own * (table.expected[t] === 1 ? 1 : options.outOfRange);
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const floor = total > 0 ? 1e-9 * total : 1;
  const floored = weights.map((weight) => Math.max(weight, floor / weights.length));
  const all = floored.reduce((sum, weight) => sum + weight, 0);
  const logPrior = new Float64Array(weights.length + 1);
  floored.forEach((weight, t) => {
    logPrior[t] = Math.log(weight / all) + Math.log1p(-options.noneOfThese);
  });
  logPrior[weights.length] = Math.log(options.noneOfThese);
  return logPrior;
};

/** Columns times their exponents, added up in the order given. */
const sumOfColumns = (parts: readonly { readonly column: EvidenceColumn; readonly exponent: number }[], size: number): EvidenceColumn => {
  const [first] = parts;
  if (first !== undefined && parts.length === 1) {
    return { values: first.column.values.map((value) => first.exponent * value), kindOfTaxon: first.column.kindOfTaxon };
  }
  const sum = new Float64Array(size);
  for (const { column, exponent } of parts) {
    const values = spreadOut(column);
    for (let h = 0; h < size; h += 1) sum[h] = (sum[h] as number) + exponent * (values[h] as number);
  }
  return { values: sum, kindOfTaxon: null };
};

/** Raises the lowest entries so that none lies more than `range` below the highest. */
const limitColumn = (column: Float64Array, range: number): void => {
  let high = -Infinity;
  for (const value of column) high = Math.max(high, value);
  for (let h = 0; h < column.length; h += 1) column[h] = Math.max(column[h] ?? 0, high - range);
};

/** For each character, all that depend on it, directly or through others. */
const dependentsOf = (table: PreparedTable): ReadonlyMap<CharacterId, readonly CharacterId[]> => {
  const found = new Map<CharacterId, CharacterId[]>();
  for (const character of table.characters.values()) {
    let parent = character.onlyIf;
    while (parent !== null) {
      const list = found.get(parent.character) ?? [];
      list.push(character.id);
      found.set(parent.character, list);
      parent = table.characters.get(parent.character)?.onlyIf ?? null;
    }
  }
  return found;
};

/** Adding and taking away 1.5 x 2^(52 - p) rounds a double to a multiple of 2^-p. */
const toCoarse = 1.5 * 2 ** 32;
const toFine = 1.5 * 2 ** -8;

const addExactly = (coarse: Float64Array, fine: Float64Array, { values, kindOfTaxon }: EvidenceColumn, sign: 1 | -1): void => {
  const high = new Float64Array(values.length);
  const low = new Float64Array(values.length);
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i] as number;
    const whole = value + toCoarse - toCoarse;
    high[i] = sign * whole;
    low[i] = sign * (value - whole + toFine - toFine);
  }
  const end = values.length - 1;
  const taxonCount = coarse.length - 1;
  for (let t = 0; t < taxonCount; t += 1) {
    const i = kindOfTaxon === null ? t : (kindOfTaxon[t] as number);
    coarse[t] = (coarse[t] as number) + (high[i] as number);
    fine[t] = (fine[t] as number) + (low[i] as number);
  }
  coarse[taxonCount] = (coarse[taxonCount] as number) + (high[end] as number);
  fine[taxonCount] = (fine[taxonCount] as number) + (low[end] as number);
};
