/**
 * Which characters to look at now: those that can be seen at a stage the plant is in and of which nothing that counts is
 * known yet come first. What exists only where another character has a certain state is never asked where that state
 * was seen not to be.
 */
import { compareParts, type Character, type Look, type OutingId, type Reading, type StageId } from "../../../engine/index.js";

/** What is known of a plant, as far as it decides what is due. */
export interface Known {
  readonly looks: readonly Pick<Look, "characterId" | "status" | "states" | "leaveOut" | "outingId">[];
  readonly readings: readonly Pick<Reading, "characterId" | "leaveOut" | "outingId">[];
}

export interface DueCharacter {
  readonly character: Character;
  /** Can be seen at a stage of today, and nothing that counts is known. */
  readonly due: boolean;
  /** Something was written down on this outing. */
  readonly today: boolean;
}

/** May the character exist on this plant, by what was seen of the one it depends on? Unknown counts as yes. */
export const mayExist = (character: Character, known: Known): boolean => {
  const { onlyIf } = character;
  if (onlyIf === null) return true;
  const seen = known.looks.filter((look) => look.characterId === onlyIf.character && look.status === "seen" && look.leaveOut === null);
  return seen.length === 0 || seen.some((look) => look.states.some((state) => onlyIf.states.includes(state)));
};

/**
 * Characters to ask, due ones first, each group from base to seed. Ratios are computed, not asked. `stages`: those answered
 * "yes" today; none = the stage is not known, then everything may be due.
 */
export const dueCharacters = (
  characters: readonly Character[],
  known: Known,
  now: { readonly stages: readonly StageId[]; readonly outingId: OutingId },
): readonly DueCharacter[] =>
  characters
    .filter((character) => character.answer.kind !== "ratio" && mayExist(character, known))
    .map((character) => {
      const of = [...known.looks, ...known.readings].filter((one) => one.characterId === character.id);
      const settled = of.some(
        (one) => one.leaveOut === null && (!("status" in one) || one.status === "seen" || one.status === "not-there"),
      );
      const visible =
        now.stages.length === 0 || character.seenIn.length === 0 || now.stages.some((stage) => character.seenIn.includes(stage));
      return { character, due: visible && !settled, today: of.some((one) => one.outingId === now.outingId) };
    })
    .toSorted(
      (a, b) =>
        Number(b.due) - Number(a.due) || compareParts(a.character.part, b.character.part) || b.character.weight - a.character.weight,
    );
