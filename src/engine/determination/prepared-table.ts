/**
 * A reference table made ready for counting: for each character one block of plain numbers over all taxa, state after
 * state or parameter after parameter, and no object per taxon. Prepared once; read by every determination.
 */
import type { CharacterId, StateId, TaxonId } from "../base/ids.js";
import type { Character } from "../characters/character.js";
import type { ReferenceTable } from "../characters/reference-table.js";
import { scoreLookup } from "./score-lookup.js";
import { defaultRangeConvention, distributionOfScore, type RangeConvention, type ScoreDistribution } from "./score-distribution.js";
import { quantileOf } from "./two-piece-normal.js";

/** How a taxon stands in a character: nobody says, scored, or the part does not exist. */
export const standing = { unknown: 0, known: 1, notApplicable: 2 } as const;

export interface StateColumns {
  readonly kind: "states";
  readonly stateIds: readonly StateId[];
  readonly ordered: boolean;
  /** Index of the state that "looked, not there" stands for; -1 = none. */
  readonly absence: number;
  /**
   * Chance of state s in taxon t at [s * taxonCount + t]; taxa without a score carry the background. Float32 halves the
   * room of a very large table at a cost of 1e-7 in each chance.
   */
  readonly frequency: Float64Array | Float32Array;
  readonly standing: Uint8Array;
  /** Taxa with the same frequencies, where they are few kinds: a look is then reckoned once a kind. null = all unlike. */
  readonly kinds: FrequencyKinds | null;
  /** Mean frequencies over the scored taxa: what an unscored taxon is taken for. */
  readonly background: Float64Array;
}

export interface FrequencyKinds {
  /** Kind of each taxon. */
  readonly ofTaxon: Uint16Array;
  /** One taxon of each kind, whose frequencies stand for all. */
  readonly example: Uint32Array;
}

export interface MeasureColumns {
  readonly kind: "measure";
  /** Whole numbers: a value stands for the interval of half a unit to either side. */
  readonly isCount: boolean;
  readonly mode: Float64Array;
  readonly sdLow: Float64Array;
  readonly sdHigh: Float64Array;
  /** 1 where mode and spreads are those of the logarithm. */
  readonly isLog: Uint8Array;
  readonly standing: Uint8Array;
  /** Smallest 0.5 % and largest 99.5 % point of all scored taxa: the field of the character. Both 0 when none is scored. */
  readonly field: { readonly low: number; readonly high: number };
}

export type PreparedCharacter = Pick<Character, "id" | "group" | "role" | "weight" | "misreading" | "onlyIf"> & {
  /** Fewest values that are measured; 1 for states. */
  readonly minN: number;
  readonly columns: StateColumns | MeasureColumns;
};

export interface PreparedTable {
  readonly taxonIds: readonly TaxonId[];
  readonly taxonIndex: ReadonlyMap<TaxonId, number>;
  /** 1 where the taxon is expected here. */
  readonly expected: Uint8Array;
  readonly characters: ReadonlyMap<CharacterId, PreparedCharacter>;
  /** Characters with a taxon in which the part does not exist. */
  readonly withMissingParts: ReadonlySet<CharacterId>;
}

/**
 * A reference table prepared by the words and ranges of its sources.
 * @throws {RangeError} if a score names a taxon or character that the table has not, or a character is given twice
 */
export const prepareTable = (table: ReferenceTable, convention: RangeConvention = defaultRangeConvention): PreparedTable => {
  const taxonIds = new Set<string>(table.taxa.map((taxon) => taxon.id));
  const characterIds = new Set<string>(table.characters.map((character) => character.id));
  for (const { taxonId, characterId } of table.scores) {
    if (!taxonIds.has(taxonId) || !characterIds.has(characterId)) {
      throw new RangeError(`prepareTable requires scores of taxa and characters in the table: got ${taxonId}, ${characterId}`);
    }
  }
  // The same lookup as the visible rule's, so that a cell with several sources is united in one way.
  const scores = scoreLookup(table);
  const rowOf = (character: Character): readonly ScoreDistribution[] =>
    table.taxa.map((taxon) => distributionOfScore(scores(taxon.id, character.id), character, convention));
  return assembleTable({
    taxa: table.taxa.map((taxon) => ({ id: taxon.id, expected: taxon.expectedInCounty })),
    characters: table.characters.map((character) => prepareCharacter(character, rowOf(character))),
  });
};

/**
 * A table from prepared characters: for fitted distributions and for tables too large for one object per score.
 * @throws {RangeError} if ids repeat, a column has another length than the taxa, or characters depend on one another in a ring
 */
export const assembleTable = (parts: {
  readonly taxa: readonly { readonly id: TaxonId; readonly expected: boolean }[];
  readonly characters: readonly PreparedCharacter[];
}): PreparedTable => {
  const taxonIndex = new Map(parts.taxa.map((taxon, i) => [taxon.id, i]));
  const characters = new Map(parts.characters.map((character) => [character.id, character]));
  if (taxonIndex.size !== parts.taxa.length) throw new RangeError("assembleTable requires each taxon once: got an id twice");
  if (characters.size !== parts.characters.length) throw new RangeError("assembleTable requires each character once: got an id twice");
  for (const character of parts.characters) {
    if (character.columns.standing.length !== parts.taxa.length) {
      throw new RangeError(
        `assembleTable requires columns of ${parts.taxa.length} taxa: got ${character.columns.standing.length} in ${character.id}`,
      );
    }
    let parent = character.onlyIf;
    for (let depth = 0; parent !== null; depth += 1) {
      if (depth > parts.characters.length)
        throw new RangeError(`assembleTable requires characters without a ring of onlyIf: got ${character.id}`);
      parent = characters.get(parent.character)?.onlyIf ?? null;
    }
  }
  return {
    taxonIds: parts.taxa.map((taxon) => taxon.id),
    taxonIndex,
    expected: Uint8Array.from(parts.taxa, (t) => (t.expected ? 1 : 0)),
    characters,
    withMissingParts: new Set(
      parts.characters.flatMap(({ id, columns }) => (columns.standing.includes(standing.notApplicable) ? [id] : [])),
    ),
  };
};

/**
 * One character with the distribution of every taxon, in the order of the taxa.
 * @throws {TypeError} if a distribution does not suit the character
 */
export const prepareCharacter = (
  character: Pick<Character, "id" | "group" | "role" | "weight" | "misreading" | "onlyIf" | "answer">,
  distributions: readonly ScoreDistribution[],
): PreparedCharacter => {
  const { id, group, role, weight, misreading, onlyIf, answer } = character;
  const head = { id, group, role, weight, misreading, onlyIf };
  if (answer.kind === "states") {
    const stateIds = answer.states.map((state) => state.id);
    const absence = answer.absence === null ? -1 : stateIds.indexOf(answer.absence);
    return { ...head, minN: 1, columns: stateColumns(id, stateIds, answer.ordered, absence, distributions) };
  }
  return { ...head, minN: answer.minN, columns: measureColumns(id, answer.kind === "count", distributions) };
};

/** Mean frequencies over the scored taxa; every state alike when none is scored. */
export const backgroundOf = (stateCount: number, frequency: Float64Array | Float32Array, stands: Uint8Array): Float64Array => {
  const taxonCount = stands.length;
  const background = new Float64Array(stateCount);
  let known = 0;
  for (let t = 0; t < taxonCount; t += 1) if (stands[t] === standing.known) known += 1;
  for (let s = 0; s < stateCount; s += 1) {
    let sum = 0;
    for (let t = 0; t < taxonCount; t += 1) if (stands[t] === standing.known) sum += frequency[s * taxonCount + t] ?? 0;
    background[s] = known === 0 ? 1 / stateCount : sum / known;
  }
  return background;
};

/**
 * Sorts taxa by their frequencies. Tables scored by words have few kinds a character; fitted frequencies are all unlike.
 * @returns null when there are more kinds than an eighth of the taxa, or than 65,536
 */
export const frequencyKinds = (stateCount: number, frequency: Float64Array | Float32Array, taxonCount: number): FrequencyKinds | null => {
  const most = Math.min(65_536, taxonCount / 8);
  const ofTaxon = new Uint16Array(taxonCount);
  const kinds = new Map<string, number>();
  const example: number[] = [];
  for (let t = 0; t < taxonCount; t += 1) {
    let key = "";
    for (let s = 0; s < stateCount; s += 1) key += `${frequency[s * taxonCount + t]} `;
    let kind = kinds.get(key);
    if (kind === undefined) {
      if (kinds.size + 1 > most) return null;
      kind = kinds.size;
      kinds.set(key, kind);
      example.push(t);
    }
    ofTaxon[t] = kind;
  }
  return { ofTaxon, example: Uint32Array.from(example) };
};

const standingOf = (distribution: ScoreDistribution): number =>
  distribution.kind === "unknown" ? standing.unknown : distribution.kind === "not-applicable" ? standing.notApplicable : standing.known;

const stateColumns = (
  id: CharacterId,
  stateIds: readonly StateId[],
  ordered: boolean,
  absence: number,
  distributions: readonly ScoreDistribution[],
): StateColumns => {
  const taxonCount = distributions.length;
  const frequency = new Float64Array(stateIds.length * taxonCount);
  const stands = Uint8Array.from(distributions, standingOf);
  distributions.forEach((distribution, t) => {
    if (distribution.kind === "two-piece-normal")
      throw new TypeError(`prepareCharacter requires frequencies for ${id}: got a distribution of values`);
    if (distribution.kind !== "frequencies") return;
    if (distribution.frequencies.length !== stateIds.length) {
      throw new TypeError(`prepareCharacter requires ${stateIds.length} frequencies for ${id}: got ${distribution.frequencies.length}`);
    }
    distribution.frequencies.forEach((share, s) => {
      frequency[s * taxonCount + t] = share;
    });
  });
  const background = backgroundOf(stateIds.length, frequency, stands);
  for (let s = 0; s < stateIds.length; s += 1) {
    for (let t = 0; t < taxonCount; t += 1) if (stands[t] !== standing.known) frequency[s * taxonCount + t] = background[s] ?? 0;
  }
  const kinds = frequencyKinds(stateIds.length, frequency, taxonCount);
  return { kind: "states", stateIds, ordered, absence, frequency, standing: stands, kinds, background };
};

const measureColumns = (id: CharacterId, isCount: boolean, distributions: readonly ScoreDistribution[]): MeasureColumns => {
  const taxonCount = distributions.length;
  const mode = new Float64Array(taxonCount);
  const sdLow = new Float64Array(taxonCount).fill(1);
  const sdHigh = new Float64Array(taxonCount).fill(1);
  const isLog = new Uint8Array(taxonCount);
  let low = Infinity;
  let high = -Infinity;
  distributions.forEach((distribution, t) => {
    if (distribution.kind === "frequencies")
      throw new TypeError(`prepareCharacter requires a distribution of values for ${id}: got frequencies`);
    if (distribution.kind !== "two-piece-normal") return;
    mode[t] = distribution.mode;
    sdLow[t] = distribution.sdLow;
    sdHigh[t] = distribution.sdHigh;
    isLog[t] = distribution.scale === "log" ? 1 : 0;
    low = Math.min(low, quantileOf(distribution, 0.005));
    high = Math.max(high, quantileOf(distribution, 0.995));
  });
  const field = low <= high ? { low, high } : { low: 0, high: 0 };
  return { kind: "measure", isCount, mode, sdLow, sdHigh, isLog, standing: Uint8Array.from(distributions, standingOf), field };
};
