import { describe, expect, it } from "vitest";
import {
  assembleTable,
  characterId,
  decibans,
  posterior,
  gatherEvidence,
  prepareCharacter,
  stateId,
  statesSeen,
  taxonId,
  weightOfEvidence,
} from "../../../src/engine/index.js";

const loaded = taxonId.parse("loaded");
const fair = taxonId.parse("fair");
const six = stateId.parse("six");
const other = stateId.parse("other");
const throwOf = (i: number) => characterId.parse(`throw${i}`);
const throws = Array.from({ length: 20 }, (_, i) => i);
const table = assembleTable({
  taxa: [loaded, fair].map((id) => ({ id, expected: true })),
  characters: throws.map((i) =>
    prepareCharacter(
      {
        id: throwOf(i),
        group: `throw ${i}`,
        role: "taxa",
        weight: 3,
        misreading: 0,
        onlyIf: null,
        answer: { kind: "states", ordered: false, absence: null, states: [six, other].map((id) => ({ id, name: id, plain: "" })) },
      },
      [
        { kind: "frequencies", frequencies: [1 / 3, 2 / 3] },
        { kind: "frequencies", frequencies: [1 / 6, 5 / 6] },
      ],
    ),
  ),
});

describe("weights of evidence after Good", () => {
  it("count ten decibans for a factor of ten, about three for two, about one for 5/4", () => {
    expect(decibans(10)).toBe(10);
    expect(decibans(2)).toBeCloseTo(3.0103, 4);
    expect(decibans(5 / 4)).toBeCloseTo(0.9691, 4);
  });

  it("add up for the loaded die", () => {
    const options = { priors: { loaded: 0.1, fair: 0.9 }, noneOfThese: 0 };
    const findings = throws.map((i) => statesSeen(throwOf(i), `throw ${i}`, [i < 10 ? six : other]));
    const weights = weightOfEvidence(gatherEvidence(table, findings, options), loaded, fair);
    expect(weights.prior).toBeCloseTo(-9.5424, 4);
    expect(Math.abs(weights.prior - -9.5)).toBeLessThan(0.5);
    const byThrow = new Map(weights.groups.map((group) => [group.group, group.decibans]));
    expect(byThrow.get("throw 0")).toBeCloseTo(3.0103, 4);
    expect(byThrow.get("throw 19")).toBeCloseTo(-0.9691, 4);
    expect(weights.total).toBeCloseTo(-9.5424 + 30.103 - 9.691, 3);
    const odds = posterior(table, findings, options).taxa[0]!.log10Odds;
    expect(10 * odds).toBeCloseTo(weights.total, 10);
  });
});
