/**
 * A plant described from base to seed, in the order floras use: once from a reference table (what the sources say) and once
 * from our own evidence, never mixed. Dull but right: one sentence a character, and every sentence carries the ids of
 * what stands behind it. The joining words come from outside, so that each language has its own.
 */
import type { CharacterId, LookId, ReadingId, SourceId, StateId, TaxonId } from "../base/ids.js";
import { compareParts } from "../characters/vocabulary.js";
import type { Character } from "../characters/character.js";
import type { ReferenceTable, ScoreValue } from "../characters/reference-table.js";
import type { CharacterFinding } from "../determination/case-file.js";
import { sampleNotation, writeFloraRange } from "../measurement/flora-notation.js";

/** What stands behind a sentence. */
export type EvidenceRef =
  | { readonly kind: "source"; readonly id: SourceId }
  | { readonly kind: "look"; readonly id: LookId }
  | { readonly kind: "reading"; readonly id: ReadingId };

/** A sentence with what it rests on. An empty list means that the table names no source. */
export interface ProseSentence {
  readonly characterId: CharacterId;
  readonly text: string;
  /** Its finding alone, without the name of the character: for tables. */
  readonly finding: string;
  readonly evidence: readonly EvidenceRef[];
}

/** The sentences of one part, in the order of the table's characters. */
export interface DescribedPart {
  readonly part: string;
  readonly sentences: readonly ProseSentence[];
}

/** The joining words of a description in one language. */
export interface ProseWords {
  readonly or: (first: string, second: string) => string;
  readonly rarely: (usual: string, rarely: string) => string;
  readonly onlyRarely: (rarely: string) => string;
  readonly sentence: (character: string, finding: string) => string;
  /** "looked for in 5 and not there"; `share` is the upper limit of the true share, 0-1, or null. */
  readonly absent: (n: number | null, share: number | null) => string;
  readonly betweenTwo: (states: string) => string;
  readonly notApplicable: string;
  /** "43–56 mm, n = 12, 5 stems". */
  readonly measured: (range: string, n: number, stems: number | null) => string;
}

/** Measured values of one character that count, pooled over readings of one unit. */
export interface PooledReading {
  readonly characterId: CharacterId;
  readonly unit: string;
  readonly values: readonly number[];
  readonly stems: number | null;
  /** Largest half-width of the measuring errors; null when none is known. */
  readonly plusMinus: number | null;
  readonly readingIds: readonly ReadingId[];
}

/** The unit of a character's numbers; "" for counts, ratios and states. */
export const unitOfCharacter = (character: Character): string => (character.answer.kind === "measure" ? character.answer.unit : "");

/** Names of states in the character's own order; an id without a state stands as itself. */
export const stateNames = (character: Character, ids: readonly StateId[]): readonly string[] => {
  if (character.answer.kind !== "states") return [...ids];
  const known = character.answer.states.filter((state) => ids.includes(state.id));
  const names = known.map((state) => state.name);
  return [...names, ...ids.filter((id) => !known.some((state) => state.id === id))];
};

/** "a, b or c". */
export const joined = (texts: readonly string[], join: (first: string, second: string) => string): string => {
  const last = texts.at(-1);
  if (last === undefined) return "";
  return texts.length === 1 ? last : join(texts.slice(0, -1).join(", "), last);
};

/** What the table says of one character, as words; null where it says nothing. */
export const scoreWords = (character: Character, value: ScoreValue, words: ProseWords): string | null => {
  switch (value.kind) {
    case "unknown":
      return null;
    case "not-applicable":
      return words.notApplicable;
    case "range":
      return writeFloraRange(value, { unit: unitOfCharacter(character) });
    case "states": {
      const usual = joined(stateNames(character, value.usual), words.or);
      const rarely = joined(stateNames(character, value.rarely), words.or);
      if (usual === "" && rarely === "") return null;
      if (rarely === "") return usual;
      return usual === "" ? words.onlyRarely(rarely) : words.rarely(usual, rarely);
    }
  }
};

/** What we found of one character, as words. Measured values come from `pooled`; without them the case's extremes stand. */
export const findingWords = (
  character: Character,
  finding: CharacterFinding,
  pooled: PooledReading | undefined,
  words: ProseWords,
): string => {
  const found = finding.finding;
  switch (found.kind) {
    case "states": {
      const states = joined(stateNames(character, found.states), words.or);
      return found.betweenTwo ? words.betweenTwo(states) : states;
    }
    case "absent":
      return words.absent(found.n, found.upperShare);
    case "measured": {
      const { unit, min, max, n, stems } = found;
      // A computed value (a ratio) has no measuring error of its own: one decimal, as floras print ratios.
      if (pooled === undefined)
        return words.measured(writeFloraRange({ min: null, low: min, high: max, max: null }, { unit, decimals: 1 }), n, stems);
      return pooledWords(pooled, words);
    }
  }
};

/** Pooled values in notation with n and stems. */
export const pooledWords = (pooled: PooledReading, words: ProseWords): string =>
  words.measured(sampleNotation(pooled.values, { unit: pooled.unit, error: pooled.plusMinus }).text, pooled.values.length, pooled.stems);

/** Groups sentences by the part of their character, parts in flora order, characters in the table's order. */
const byPart = (table: ReferenceTable, sentenceOf: (character: Character) => ProseSentence | null): readonly DescribedPart[] => {
  const parts = new Map<string, ProseSentence[]>();
  for (const character of table.characters) {
    const sentence = sentenceOf(character);
    if (sentence === null) continue;
    const known = parts.get(character.part);
    if (known === undefined) parts.set(character.part, [sentence]);
    else known.push(sentence);
  }
  return [...parts].sort(([a], [b]) => compareParts(a, b)).map(([part, sentences]) => ({ part, sentences }));
};

/** The description of a taxon as the table's sources give it. Characters without a value are passed over in silence. */
export const describeTaxon = (table: ReferenceTable, taxonId: TaxonId, words: ProseWords): readonly DescribedPart[] =>
  byPart(table, (character) => {
    const score = table.scores.find((s) => s.taxonId === taxonId && s.characterId === character.id);
    const finding = score === undefined || score.value.kind === "not-applicable" ? null : scoreWords(character, score.value, words);
    if (score === undefined || finding === null) return null;
    return {
      characterId: character.id,
      text: words.sentence(character.name, finding),
      finding,
      evidence: score.sourceId === null ? [] : [{ kind: "source", id: score.sourceId }],
    };
  });

/** The description of what we saw and measured ourselves. */
export const describeFindings = (
  table: ReferenceTable,
  { findings, pooled }: { readonly findings: readonly CharacterFinding[]; readonly pooled: readonly PooledReading[] },
  words: ProseWords,
): readonly DescribedPart[] =>
  byPart(table, (character) => {
    const finding = findings.find((f) => f.characterId === character.id);
    const measured = pooled.find((p) => p.characterId === character.id);
    if (finding === undefined && measured === undefined) return null;
    const text =
      finding === undefined
        ? measured === undefined
          ? ""
          : pooledWords(measured, words)
        : findingWords(character, finding, measured, words);
    const readingIds = [...new Set([...(finding?.readingIds ?? []), ...(measured?.readingIds ?? [])])];
    return {
      characterId: character.id,
      text: words.sentence(character.name, text),
      finding: text,
      evidence: [
        ...(finding?.lookIds ?? []).map((id) => ({ kind: "look" as const, id })),
        ...readingIds.map((id) => ({ kind: "reading" as const, id })),
      ],
    };
  });
