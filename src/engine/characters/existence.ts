/** Characters that exist only where another has certain states: no stalk, no stalk length. */
import type { StateId } from "../base/ids.js";
import type { Character } from "./character.js";
import { statesSaid } from "./conflicts.js";
import type { Look } from "./evidence.js";

export interface Existence {
  /** False when all that was said of the character it hangs on rules it out; true when nothing was said of that one. */
  readonly exists: boolean;
  /** What was said of the character it hangs on, "looked, not there" included where it stands for a state. */
  readonly said: readonly StateId[];
}

/** Whether a character exists on a plant, by the looks of that plant that count. */
export const existenceOf = (character: Character, characters: readonly Character[], looks: readonly Look[]): Existence => {
  const { onlyIf } = character;
  const parent = onlyIf === null ? undefined : characters.find((one) => one.id === onlyIf.character);
  if (onlyIf === null || parent === undefined) return { exists: true, said: [] };
  const said = looks.flatMap((look) => (look.characterId === parent.id && look.leaveOut === null ? statesSaid(parent, look) : []));
  return { exists: said.length === 0 || said.some((state) => onlyIf.states.includes(state)), said };
};
