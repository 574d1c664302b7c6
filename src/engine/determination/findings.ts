/**
 * Looks and readings of one plant pooled into one finding per character: what the case, the board and the page speak of.
 * Only evidence that counts goes in (not left out, up to the day); "could not tell" and "not looked" say nothing.
 */
import type { IsoDate } from "../base/dates.js";
import type { StateId } from "../base/ids.js";
import type { Character } from "../characters/character.js";
import type { Look, Reading } from "../characters/evidence.js";
import { ratiosOf } from "../characters/ratios.js";
import { median } from "../measurement/quantile.js";
import type { CharacterFinding, Finding } from "./case-file.js";

/** Measured values speak only when there are at least this many: one or two organs may be the odd ones. Common practice, no source. */
export const LEAST_VALUES_THAT_SPEAK = 3;

export interface PlantEvidence {
  readonly looks: readonly Look[];
  readonly readings: readonly Reading[];
}

/** What counts of the evidence up to and including a day; null = all of it. */
export const evidenceUpTo = (evidence: PlantEvidence, upTo: IsoDate | null): PlantEvidence => ({
  looks: evidence.looks.filter((look) => look.leaveOut === null && (upTo === null || look.date <= upTo)),
  readings: evidence.readings.filter((reading) => reading.leaveOut === null && (upTo === null || reading.date <= upTo)),
});

const measuredFinding = (values: readonly number[], unit: string, stems: number | null, plusMinus: number | null): Finding => ({
  kind: "measured",
  unit,
  median: median(values),
  min: Math.min(...values),
  max: Math.max(...values),
  values,
  n: values.length,
  stems,
  plusMinus,
  speaks: values.length >= LEAST_VALUES_THAT_SPEAK,
});

/** The largest share of the plant's organs that may still have it when none in n was seen, at 95 % confidence: 1 - 0.05^(1/n). */
export const upperShareOfNoneIn = (n: number): number => 1 - 0.05 ** (1 / n);

const largest = (numbers: readonly (number | null)[]): number | null => {
  const known = numbers.filter((n) => n !== null);
  return known.length === 0 ? null : Math.max(...known);
};

const lensPower = (lens: string | null): number => (lens === null ? 1 : Number(/\d+/.exec(lens)?.[0] ?? 1));

const findingOfLooks = (character: Character, looks: readonly Look[]): CharacterFinding | null => {
  if (character.answer.kind !== "states") return null;
  const absence = character.answer.absence;
  const speaking = looks.filter((look) => look.status === "seen" || (look.status === "not-there" && absence !== null));
  if (speaking.length === 0) return null;
  const said = (look: Look): readonly StateId[] => (look.status === "seen" ? look.states : absence === null ? [] : [absence]);
  const decided = speaking.filter((look) => look.sure !== "between-two").flatMap(said);
  // A look that could not decide between states is decided by one that could, where the two agree on a state.
  const settledBy = (look: Look): readonly StateId[] => {
    const shared = said(look).filter((state) => decided.includes(state));
    return look.sure === "between-two" && shared.length > 0 ? shared : said(look);
  };
  const states = [...new Set(speaking.flatMap(settledBy))];
  const n = largest(speaking.map((look) => look.n));
  const strongest = speaking.toSorted((a, b) => lensPower(b.lens) - lensPower(a.lens))[0];
  const onlyAbsent = speaking.every((look) => look.status === "not-there");
  const finding: Finding = onlyAbsent
    ? { kind: "absent", states, n, upperShare: n === null ? null : upperShareOfNoneIn(n) }
    : { kind: "states", states, betweenTwo: states.length > 1 && speaking.some((look) => look.sure === "between-two") };
  return {
    characterId: character.id,
    group: character.group,
    finding,
    lookIds: speaking.map((look) => look.id),
    readingIds: [],
    dates: [...new Set(speaking.map((look) => look.date))].toSorted(),
    lens: strongest?.lens ?? null,
    n,
  };
};

const findingOfReadings = (character: Character, readings: readonly Reading[]): CharacterFinding | null => {
  const { answer } = character;
  if (answer.kind === "states") return null;
  const { values, from } =
    answer.kind === "ratio"
      ? ratiosOf(readings, answer.numerator, answer.denominator)
      : (() => {
          const own = readings.filter((reading) => reading.characterId === character.id);
          return { values: own.flatMap((reading) => reading.values), from: own };
        })();
  if (values.length === 0) return null;
  return {
    characterId: character.id,
    group: character.group,
    finding: measuredFinding(
      values,
      answer.kind === "measure" ? answer.unit : "",
      largest(from.map((reading) => reading.stems)),
      // The error of a ratio is not the error of either length.
      answer.kind === "ratio" ? null : largest(from.map((reading) => reading.plusMinus)),
    ),
    lookIds: [],
    readingIds: from.map((reading) => reading.id),
    dates: [...new Set(from.map((reading) => reading.date))].toSorted(),
    lens: null,
    n: values.length,
  };
};

/**
 * One finding per character that has evidence, in the order of the characters. States of several looks are united: what was
 * seen once was there. Values of several series are pooled.
 * @param evidence what counts; cut it with {@link evidenceUpTo} first
 */
export const findingsOf = (characters: readonly Character[], evidence: PlantEvidence): readonly CharacterFinding[] =>
  characters.flatMap((character) => {
    const finding =
      findingOfLooks(
        character,
        evidence.looks.filter((look) => look.characterId === character.id),
      ) ?? findingOfReadings(character, evidence.readings);
    return finding === null ? [] : [finding];
  });
