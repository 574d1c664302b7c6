import { describe, expect, it } from "vitest";
import type { CharacterId, StateId, TaxonId } from "../base/ids.js";
import { lookedNotThere, statesSeen, valuesMeasured } from "./evidence-input.js";
import { misreadingMatrix, misreadingRate } from "./misreading.js";
import { posterior } from "./posterior.js";
import { assembleTable, prepareCharacter } from "./prepared-table.js";
import { distributionOfScore, frequenciesFromCounts, type ScoreDistribution } from "./score-distribution.js";
import { fitTwoPieceNormal, logChanceBetween, quantileOf } from "./two-piece-normal.js";

const states = (names: string) => names.split("").map((id) => ({ id: id as StateId, name: id, plain: "" }));
const answerOf = (names: string, ordered = false, absence: string | null = null) => ({
  kind: "states" as const,
  ordered,
  absence: absence as StateId | null,
  states: states(names),
});
const character = (id: string, answer: Parameters<typeof prepareCharacter>[0]["answer"], more: object = {}) =>
  ({ id: id as CharacterId, group: id, role: "taxa", weight: 3, misreading: null, onlyIf: null, answer, ...more }) as Parameters<
    typeof prepareCharacter
  >[0];
const ids = (names: string) => names.split("") as StateId[];

const frequencies = (usual: string, rarely: string, all = "abcd"): readonly number[] | null => {
  const d = distributionOfScore({ kind: "states", usual: ids(usual), rarely: ids(rarely) }, character("x", answerOf(all)));
  return d.kind === "frequencies" ? d.frequencies : null;
};
const table = (characters: readonly (readonly [Parameters<typeof prepareCharacter>[0], readonly ScoreDistribution[]])[], taxa = 2) =>
  assembleTable({
    taxa: Array.from({ length: taxa }, (_, t) => ({ id: `t${t}` as TaxonId, expected: true })),
    characters: characters.map(([one, distributions]) => prepareCharacter(one, distributions)),
  });

describe("words of frequency", () => {
  it("share out the whole and leave no cell at 0", () => {
    expect(frequencies("a", "")!.map((p) => p.toFixed(6))).toEqual(["0.980000", "0.006667", "0.006667", "0.006667"]);
    expect(frequencies("ab", "c")!.map((p) => p.toFixed(2))).toEqual(["0.45", "0.45", "0.08", "0.02"]);
    expect(frequencies("", "c")!.map((p) => p.toFixed(4))).toEqual(["0.3067", "0.3067", "0.0800", "0.3067"]);
    for (const [usual, rarely] of [
      ["abcd", ""],
      ["a", "bcd"],
      ["", "abcd"],
    ] as const) {
      expect(frequencies(usual, rarely)!.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 14);
    }
    expect(frequencies("", "")).toBeNull();
  });

  it("give way to counted plants", () => {
    expect(frequenciesFromCounts([8, 2], [0.5, 0.5], 10)).toEqual([0.65, 0.35]);
    expect(() => frequenciesFromCounts([1], [0.5, 0.5], 10)).toThrow(RangeError);
  });
});

describe("printed ranges", () => {
  it("come back from the fit: exactly with three numbers, nearly with four", () => {
    const three = fitTwoPieceNormal([
      { share: 0.1, value: 10 },
      { share: 0.9, value: 14 },
      { share: 0.995, value: 17 },
    ]);
    for (const [q, x] of [
      [0.1, 10],
      [0.9, 14],
      [0.995, 17],
    ] as const)
      expect(quantileOf({ scale: "linear", ...three }, q)).toBeCloseTo(x, 4);
    const four = fitTwoPieceNormal([0.005, 0.1, 0.9, 0.995].map((share, i) => ({ share, value: [15, 30, 70, 100][i]! })));
    for (const [q, x] of [
      [0.005, 15],
      [0.1, 30],
      [0.9, 70],
      [0.995, 100],
    ] as const) {
      expect(Math.abs(quantileOf({ scale: "linear", ...four }, q) - x)).toBeLessThan(2);
    }
  });

  it("hold the whole chance between far points, on both scales", () => {
    expect(Math.exp(logChanceBetween({ scale: "linear", mode: 3, sdLow: 1, sdHigh: 4 }, -1e3, 1e3))).toBeCloseTo(1, 12);
    expect(Math.exp(logChanceBetween({ scale: "log", mode: 3, sdLow: 1, sdHigh: 0.2 }, 0, 1e9))).toBeCloseTo(1, 12);
  });
});

describe("the observer's channel", () => {
  it("has rows that sum to one and sends errors of ordered states to neighbours", () => {
    const matrix = misreadingMatrix(4, true, 0.1);
    for (let s = 0; s < 4; s += 1) expect(matrix.subarray(4 * s, 4 * s + 4).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 14);
    expect(matrix[1]! / matrix[2]!).toBeCloseTo(4, 12);
    expect(misreadingRate(3, null, "trained")).toBe(0.08);
    expect(misreadingRate(5, null, "novice")).toBeCloseTo(0.3, 12);
    expect(misreadingRate(5, 0.01, "novice")).toBe(0.01);
  });
});

describe("evidence of one kind or another", () => {
  const d = (shares: readonly number[]): ScoreDistribution => ({ kind: "frequencies", frequencies: shares });
  const hair = character("hair", answerOf("abc", false, "a"));
  const two = table([[hair, [d([0.1, 0.8, 0.1]), d([0.8, 0.1, 0.1])]]]);
  const chanceOf = (seen: Parameters<typeof posterior>[1][number]): number =>
    posterior(two, [seen], { noneOfThese: 0 }).taxa[0]!.probability;

  it("weighs less the less sure it is", () => {
    const sure = chanceOf(statesSeen(hair.id, "hair", ids("b")));
    const fairly = chanceOf(statesSeen(hair.id, "hair", ids("b"), "fairly"));
    const between = chanceOf(statesSeen(hair.id, "hair", ids("bc"), "between-two"));
    expect(sure).toBeGreaterThan(fairly);
    expect(fairly).toBeGreaterThan(0.5);
    expect(between).toBeGreaterThan(0.5);
    expect(chanceOf(statesSeen(hair.id, "hair", ids("ab"), "between-two"))).toBeCloseTo(0.5, 12);
  });

  it("weighs absence more the more was looked at, and nothing where absence is no state", () => {
    const one = chanceOf(lookedNotThere(hair.id, "hair", 1));
    const many = chanceOf(lookedNotThere(hair.id, "hair", 20));
    expect(one).toBeLessThan(0.5);
    expect(many).toBeLessThan(one);
    const blunt = table([[character("hair", answerOf("abc")), [d([0.1, 0.8, 0.1]), d([0.8, 0.1, 0.1])]]]);
    expect(posterior(blunt, [lookedNotThere(hair.id, "hair", 20)], { noneOfThese: 0 }).taxa[0]!.probability).toBeCloseTo(0.5, 12);
  });

  it("does not let a taxon win by being unscored", () => {
    const three = table([[hair, [d([0.02, 0.96, 0.02]), d([0.96, 0.02, 0.02]), { kind: "unknown" }]]], 3);
    const { taxa } = posterior(three, [statesSeen(hair.id, "hair", ids("b"))], { noneOfThese: 0 });
    expect(taxa[0]!.probability).toBeGreaterThan(taxa[2]!.probability);
    expect(taxa[2]!.probability).toBeGreaterThan(taxa[1]!.probability);
  });

  it("takes an answer about a missing part as a misreading, not as a proof", () => {
    const stalk = character("stalk", answerOf("ny"));
    const length = character("length", { kind: "measure", unit: "mm", minN: 1 }, { onlyIf: { character: "stalk", states: ["y"] } });
    const both = table([
      [stalk, [d([0.02, 0.98]), d([0.98, 0.02])]],
      [length, [{ kind: "two-piece-normal", scale: "linear", mode: 10, sdLow: 2, sdHigh: 2 }, { kind: "not-applicable" }]],
    ]);
    const { taxa } = posterior(both, [valuesMeasured(length.id, "length", [10, 11, 9])], { noneOfThese: 0 });
    expect(taxa[0]!.probability).toBeGreaterThan(0.9);
    expect(taxa[1]!.probability).toBeGreaterThan(1e-4);
  });

  it("brings less from two characters of one group than from two groups", () => {
    const make = (groups: readonly string[]) =>
      table(groups.map((group, j) => [{ ...character(`c${j}`, answerOf("ab")), group }, [d([0.9, 0.1]), d([0.2, 0.8])]] as const));
    const run = (groups: readonly string[]): number =>
      posterior(
        make(groups),
        groups.map((group, j) => statesSeen(`c${j}` as CharacterId, group, ids("a"))),
        { noneOfThese: 0 },
      ).taxa[0]!.log10Odds;
    expect(run(["g", "g"])).toBeCloseTo((run(["g", "h"]) * 2) / 3, 10);
    expect(run(["g", "g"])).toBeGreaterThan(run(["g"]));
  });

  it("lets a support character speak no more than its limit, and a hybrid check not at all", () => {
    const make = (role: string) => table([[character("c", answerOf("ab"), { role }), [d([0.9999, 0.0001]), d([0.0001, 0.9999])]]]);
    const run = (role: string): number =>
      posterior(make(role), [statesSeen("c" as CharacterId, "c", ids("a"))], { noneOfThese: 0 }).taxa[0]!.log10Odds;
    expect(run("support")).toBeGreaterThan(0);
    expect(10 * run("support")).toBeLessThanOrEqual(3.0000001);
    expect(run("hybrid-check")).toBeCloseTo(0, 12);
  });
});

describe("a table of few kinds of taxa", () => {
  it("says the same of every taxon as one reckoned taxon by taxon", () => {
    const rows = [
      [0.7, 0.2, 0.1],
      [0.1, 0.1, 0.8],
    ];
    const kinded = prepareCharacter(
      character("c", answerOf("abc")),
      Array.from({ length: 40 }, (_, t) => ({ kind: "frequencies", frequencies: rows[t % 3 === 0 ? 1 : 0]! })),
    );
    if (kinded.columns.kind !== "states") throw new TypeError("expected states");
    expect(kinded.columns.kinds?.example).toHaveLength(2);
    const taxa = Array.from({ length: 40 }, (_, t) => ({ id: `t${t}` as TaxonId, expected: true }));
    const plain = { ...kinded, columns: { ...kinded.columns, kinds: null } };
    for (const seen of [statesSeen(kinded.id, "c", ids("b")), statesSeen(kinded.id, "c", ids("ac"), "fairly")]) {
      const one = posterior(assembleTable({ taxa, characters: [kinded] }), [seen]);
      const other = posterior(assembleTable({ taxa, characters: [plain] }), [seen]);
      one.taxa.forEach(({ probability }, t) => expect(Math.abs(probability - other.taxa[t]!.probability)).toBeLessThan(1e-14));
      expect(Math.abs(one.noneOfThese.probability - other.noneOfThese.probability)).toBeLessThan(1e-14);
    }
  });
});
