import { describe, expect, it } from "vitest";
import { character, type CharacterId, type Look, type OutingId, type StageId, type StateId } from "../../../engine/index.js";
import { dueCharacters, mayExist, type Known } from "./due-characters.js";

const make = (id: string, part: string, seenIn: string[], more: object = {}) =>
  character.parse({
    id,
    part,
    name: id,
    group: id,
    seenIn,
    answer: {
      kind: "states",
      states: [
        { id: "a", name: "a" },
        { id: "b", name: "b" },
      ],
    },
    ...more,
  });
const lines = make("lines", "stem", ["S2", "S4"]);
const seeds = make("seeds", "seed", ["S7"]);
const joint = make("joint", "leaf", ["S2", "S4"]);
const stalk = make("stalk", "leaf", ["S2", "S4"], { onlyIf: { character: "joint", states: ["b"] } });
const ratio = make("ratio", "leaf", ["S4"], { answer: { kind: "ratio", numerator: "x", denominator: "y" } });
const look = (characterId: string, more: Partial<Look> = {}): Known["looks"][number] => ({
  characterId: characterId as CharacterId,
  status: "seen",
  states: ["a" as StateId],
  leaveOut: null,
  outingId: "V1" as OutingId,
  ...more,
});
const now = { stages: ["S4" as StageId], outingId: "V2" as OutingId };
const ids = (of: readonly { character: { id: string }; due: boolean }[]): string[] => of.map((d) => `${d.character.id}${d.due ? "!" : ""}`);

describe("what is due at a plant", () => {
  it("puts what can be seen now and is not known yet first, base to seed; ratios are never asked", () => {
    expect(ids(dueCharacters([seeds, joint, lines, ratio], { looks: [], readings: [] }, now))).toEqual(["lines!", "joint!", "seeds"]);
  });

  it("does not ask again what is known, but does when it was left out or could not be told", () => {
    const of = (l: Known["looks"][number]) => ids(dueCharacters([lines], { looks: [l], readings: [] }, now));
    expect(of(look("lines"))).toEqual(["lines"]);
    expect(of(look("lines", { status: "not-there", states: [] }))).toEqual(["lines"]);
    expect(of(look("lines", { leaveOut: "young" }))).toEqual(["lines!"]);
    expect(of(look("lines", { status: "could-not-tell", states: [] }))).toEqual(["lines!"]);
    expect(of(look("lines", { status: "not-looked", states: [] }))).toEqual(["lines!"]);
  });

  it("never asks for the length of a stalk where no stalk was seen", () => {
    expect(mayExist(stalk, { looks: [], readings: [] })).toBe(true);
    expect(mayExist(stalk, { looks: [look("joint")], readings: [] })).toBe(false);
    expect(mayExist(stalk, { looks: [look("joint", { states: ["b" as StateId] })], readings: [] })).toBe(true);
  });

  it("takes everything for visible as long as no stage is known", () => {
    expect(ids(dueCharacters([seeds], { looks: [], readings: [] }, { ...now, stages: [] }))).toEqual(["seeds!"]);
  });
});
