/**
 * What the probability side is told of one character of one plant: all looks or readings that count, pooled. A character
 * nobody looked at has no entry; it then says nothing at all.
 */
import type { CharacterId, StateId } from "../base/ids.js";

/** How sure the observer was: sure, fairly sure, or unable to decide between the states named. */
export type Sureness = "sure" | "fairly" | "between-two";

export interface CharacterEvidence {
  readonly characterId: CharacterId;
  /** Characters of one group are one witness and are weighed together. */
  readonly group: string;
  readonly kind: "states" | "absent" | "measured";
  /**
   * `states`: the states seen; several with `sure` or `fairly` = all of them occur. `absent`: the state that "looked, not
   * there" stands for; empty = the one the character names; if it names none, the look says nothing. `measured`: empty.
   */
  readonly states: readonly StateId[];
  readonly sureness: Sureness;
  /** How many stems, flowers or seeds were looked at; null = not said, taken as one. */
  readonly n: number | null;
  /** `measured`: every pooled value, in the unit of the character. Else empty. */
  readonly values: readonly number[];
  /** `measured`: how many stems the values come from; null = not said, each value then stands for itself. */
  readonly stems: number | null;
  /** `measured`: error of one value as a half-width, same unit; null = none stated. */
  readonly plusMinus: number | null;
}

const blank = { states: [], sureness: "sure", n: null, values: [], stems: null, plusMinus: null } as const;

/** Evidence that states were seen. */
export const statesSeen = (
  characterId: CharacterId,
  group: string,
  states: readonly StateId[],
  sureness: Sureness = "sure",
): CharacterEvidence => ({ ...blank, characterId, group, kind: "states", states, sureness });

/** Evidence that a part or state was looked for in n stems, flowers or seeds and was not there. */
export const lookedNotThere = (characterId: CharacterId, group: string, n: number | null): CharacterEvidence => ({
  ...blank,
  characterId,
  group,
  kind: "absent",
  n,
});

/** Evidence of measured or counted values. */
export const valuesMeasured = (
  characterId: CharacterId,
  group: string,
  values: readonly number[],
  more: { readonly stems?: number | null; readonly plusMinus?: number | null } = {},
): CharacterEvidence => ({
  ...blank,
  characterId,
  group,
  kind: "measured",
  values,
  n: values.length,
  stems: more.stems ?? null,
  plusMinus: more.plusMinus ?? null,
});
