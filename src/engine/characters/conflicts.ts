/** Looks at one character that cannot both be right: they share no state. Both stand until someone decides. */
import type { CharacterId, StateId } from "../base/ids.js";
import type { Character } from "./character.js";
import type { Look } from "./evidence.js";

export interface Conflict {
  readonly characterId: CharacterId;
  /** The looks in conflict, by date. */
  readonly looks: readonly Look[];
}

/** What a look says of a character's states; empty when it says none. */
export const statesSaid = (character: Character, look: Look): readonly StateId[] => {
  if (character.answer.kind !== "states") return [];
  if (look.status === "seen") return look.states;
  return look.status === "not-there" && character.answer.absence !== null ? [character.answer.absence] : [];
};

/**
 * Conflicts among looks that count. "Not there" of a character without a state for absence never conflicts with a later
 * state: it was too early.
 */
export const conflictsOf = (characters: readonly Character[], looks: readonly Look[]): readonly Conflict[] =>
  characters.flatMap((character) => {
    const speaking = looks
      .filter((look) => look.characterId === character.id && look.leaveOut === null && statesSaid(character, look).length > 0)
      .toSorted((a, b) => (a.date < b.date ? -1 : 1));
    const inConflict = speaking.filter((look) =>
      speaking.some((other) => !statesSaid(character, look).some((state) => statesSaid(character, other).includes(state))),
    );
    return inConflict.length === 0 ? [] : [{ characterId: character.id, looks: inConflict }];
  });
