/** What would decide: unseen characters by how many of the pairs still open they tell apart, and when they can be seen. */
import type { IsoDate } from "../base/dates.js";
import type { CharacterId, TaxonId } from "../base/ids.js";
import type { Character } from "../characters/character.js";
import type { Happening } from "../characters/followed-plant.js";
import type { ReferenceTable } from "../characters/reference-table.js";
import { addDays } from "../base/dates.js";
import { nextWindow } from "../season/stage-window.js";
import type { CharacterFinding, NextCheck, RuleOutcome } from "./case-file.js";
import { difference } from "./meeting.js";
import type { ScoreLookup } from "./score-lookup.js";

/** Go this long before the day on which the plant was mown last year. Common practice, no source. */
export const DAYS_BEFORE_LAST_YEARS_LOSS = 2;

/**
 * The pairs still to be told apart: every pair of those left; when one is left, that one against each rival that is out by a
 * single witness.
 */
export const openPairs = (outcome: RuleOutcome): readonly (readonly [TaxonId, TaxonId])[] => {
  const { left } = outcome;
  if (left.length > 1) return left.flatMap((a, i) => left.slice(i + 1).map((b) => [a, b] as const));
  const [only] = left;
  if (only === undefined) return [];
  return outcome.wanting.flatMap((want) =>
    want.kind === "rivals-out-by-one-witness" ? want.taxonIds.map((rival) => [only, rival] as const) : [],
  );
};

const lossOf = (happenings: readonly Happening[], upTo: IsoDate): NextCheck["lostThisYear"] => {
  const year = upTo.slice(0, 4);
  // A mowing ends its own year; a plant that died is gone for good.
  const ended = happenings
    .filter((h) => h.endsYear && h.date <= upTo && (h.kind === "died" || h.date.slice(0, 4) === year))
    .toSorted((a, b) => (a.date < b.date ? -1 : 1))[0];
  if (ended === undefined) return null;
  // Reckoned in this year, which has the day, and carried over: the next one may have no 29 February.
  const before = `${String(Number(year) + 1)}${addDays(ended.date, -DAYS_BEFORE_LAST_YEARS_LOSS).slice(4)}` as IsoDate;
  return { happeningId: ended.id, kind: ended.kind, on: ended.date, nextYearBefore: ended.kind === "died" ? null : before };
};

/**
 * Unseen characters that separate open pairs: 1 for each pair separated surely, 0.5 for each separated usually; the sum times
 * the character's weight; by score, then weight, then id. Characters that separate nothing are not listed.
 * @param upTo the day the case is read at; null = no dates are given
 * @param bits expected information of a character in bits, where a probability engine offers it
 */
export const nextChecks = (
  table: ReferenceTable,
  scores: ScoreLookup,
  outcome: RuleOutcome,
  findings: readonly CharacterFinding[],
  happenings: readonly Happening[],
  upTo: IsoDate | null,
  bits: (characterId: CharacterId) => number | null,
): readonly NextCheck[] => {
  const pairs = openPairs(outcome);
  const seen = new Set<string>(findings.map((finding) => finding.characterId));
  const check = (character: Character): NextCheck | null => {
    const separates = pairs.flatMap(([a, b]) => {
      const how = difference(scores(a, character.id), scores(b, character.id));
      return how === "sure" || how === "usual" ? [{ a, b, how }] : [];
    });
    const worth = separates.reduce((sum, { how }) => sum + (how === "sure" ? 1 : 0.5), 0);
    if (worth === 0 || character.weight === 0) return null;
    const stages = table.stages.filter((stage) => character.seenIn.includes(stage.id));
    const window = upTo === null ? null : nextWindow(stages, upTo);
    return {
      characterId: character.id,
      pairs: worth,
      pairsInAll: pairs.length,
      score: worth * character.weight,
      bits: bits(character.id),
      seenIn: character.seenIn,
      tool: character.tool,
      disturbs: character.disturbs,
      from: window?.from ?? null,
      to: window?.to ?? null,
      lostThisYear: upTo === null ? null : lossOf(happenings, upTo),
      separates,
    };
  };
  const weight = new Map<string, number>(table.characters.map((character) => [character.id, character.weight]));
  return table.characters
    .filter((character) => !seen.has(character.id))
    .flatMap((character) => check(character) ?? [])
    .toSorted(
      (a, b) =>
        b.score - a.score ||
        (weight.get(b.characterId) ?? 0) - (weight.get(a.characterId) ?? 0) ||
        (a.characterId < b.characterId ? -1 : 1),
    );
};

/** Of the next checks, those that can be seen in a stage: what to look for on a visit. Visits to the plant that can't be reached have none. */
export const checksAtStages = (checks: readonly NextCheck[], stageIds: readonly string[]): readonly NextCheck[] =>
  checks.filter((check) => check.seenIn.some((stage) => stageIds.includes(stage)));
