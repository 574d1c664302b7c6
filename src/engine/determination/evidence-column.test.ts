import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CharacterId, StateId, TaxonId } from "../base/ids.js";
import { statesSeen } from "./evidence-input.js";
import { assembleTable, prepareCharacter, type PreparedTable } from "./prepared-table.js";
import { probabilitiesOf } from "./posterior.js";
import { startEvidence } from "./running-evidence.js";

const taxonCount = 40;
const stateOf = (s: number): StateId => `s${s}` as StateId;
const shares: readonly (readonly number[])[] = [
  [1, 0, 0],
  [0.5, 0.5, 0],
  [0.1, 0.2, 0.7],
];

/** Taxa of three kinds; two characters share a group, one is support. */
const table = (kindOf: readonly number[]): PreparedTable =>
  assembleTable({
    taxa: kindOf.map((_, t) => ({ id: `t${t}` as TaxonId, expected: t % 3 > 0 })),
    characters: (["leaf", "leaf", "flower", "fruit"] as const).map((group, j) =>
      prepareCharacter(
        {
          id: `c${j}` as CharacterId,
          group,
          role: j === 3 ? "support" : "taxa",
          weight: 3,
          misreading: 0.08,
          onlyIf: null,
          answer: {
            kind: "states",
            ordered: false,
            absence: null,
            states: [0, 1, 2].map((s) => ({ id: stateOf(s), name: "x", plain: "" })),
          },
        },
        kindOf.map((kind, t) => ({ kind: "frequencies" as const, frequencies: shares[(kind + t * j) % 3] ?? [] })),
      ),
    ),
  });

/** The same table with a column as long as the table for every character. */
const unlike = (of: PreparedTable): PreparedTable => ({
  ...of,
  characters: new Map(
    [...of.characters].map(([id, character]) => [
      id,
      character.columns.kind === "states" ? { ...character, columns: { ...character.columns, kinds: null } } : character,
    ]),
  ),
});

const kinds = fc.array(fc.nat(2), { minLength: taxonCount, maxLength: taxonCount });
const answers = fc.uniqueArray(fc.tuple(fc.nat(3), fc.nat(2)), { minLength: 1, maxLength: 4, selector: ([j]) => j });

describe("one number a kind of taxa", () => {
  it("gives what one number a taxon gives, and its own bits again after taking back", () => {
    fc.assert(
      fc.property(kinds, answers, (kindOf, said) => {
        const prepared = table(kindOf);
        expect([...prepared.characters.values()].every(({ columns }) => columns.kind === "states" && columns.kinds !== null)).toBe(true);
        const [short, long] = [startEvidence(prepared), startEvidence(unlike(prepared))];
        const look = ([j, s]: readonly [number, number]) => statesSeen(`c${j}` as CharacterId, `g${j === 1 ? 0 : j}`, [stateOf(s)]);
        for (const one of said) short.answer(look(one));
        for (const one of said.toReversed()) long.answer(look(one));
        // The two ways add the states up in another order: equal to rounding.
        short.logJoint().forEach((value, h) => expect(value).toBeCloseTo(long.logJoint()[h]!, 12));
        const before = short.logJoint();
        short.takeBack(look(said[0]!).characterId);
        short.answer(look(said[0]!));
        expect(short.logJoint()).toEqual(before);
        for (const one of said) short.takeBack(look(one).characterId);
        expect(short.logEvidence()).toEqual(new Float64Array(taxonCount + 1));
      }),
    );
  });

  it("is read back for a taxon and for none of these", () => {
    const running = startEvidence(table(Array.from({ length: taxonCount }, (_, t) => t % 3)));
    running.answer(statesSeen("c0" as CharacterId, "leaf", [stateOf(0)]));
    const [answered] = running.answered();
    // Misreading 0.08 over two other states; frequencies as above.
    expect(Math.exp(answered!.logLikelihoodAt(0))).toBeCloseTo(0.92, 12);
    expect(Math.exp(answered!.logLikelihoodAt(1))).toBeCloseTo(0.5 * 0.92 + 0.5 * 0.04, 12);
    expect(Math.exp(answered!.logLikelihoodAt(2))).toBeCloseTo(0.1 * 0.92 + 0.9 * 0.04, 12);
    expect(running.logEvidence()[taxonCount]).toBeCloseTo(answered!.logLikelihoodAt(taxonCount), 12);
  });

  it("puts chances into the array given", () => {
    const running = startEvidence(table(Array.from({ length: taxonCount }, (_, t) => t % 3)));
    const into = new Float64Array(taxonCount + 1).fill(7);
    expect(probabilitiesOf(running, into)).toBe(into);
    expect(into).toEqual(probabilitiesOf(running));
  });
});
