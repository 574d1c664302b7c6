import { describe, expect, it } from "vitest";
import type { CharacterId, StateId, TaxonId } from "../base/ids.js";
import { randomSource } from "../base/random.js";
import { statesSeen, valuesMeasured, type CharacterEvidence } from "./evidence-input.js";
import { gatherEvidence, posteriorOf } from "./posterior.js";
import { assembleTable, prepareCharacter, type PreparedTable } from "./prepared-table.js";
import { robustness, surprises } from "./robustness.js";
import { fittedNormal } from "./two-piece-normal.js";
import { typicality } from "./typicality.js";

const count = 6;
const stateIds = ["a", "b", "c"] as StateId[];
const id = (j: number): CharacterId => `c${j}` as CharacterId;

/** Four taxa, six characters of three states in as many groups as asked, numbers drawn from a seed. */
const drawn = (seed: number, groups: number): { readonly table: PreparedTable; readonly findings: readonly CharacterEvidence[] } => {
  const random = randomSource(seed);
  const table = assembleTable({
    taxa: [0, 1, 2, 3].map((t) => ({ id: `t${t}` as TaxonId, expected: true })),
    characters: Array.from({ length: count }, (_, j) =>
      prepareCharacter(
        {
          id: id(j),
          group: `g${j % groups}`,
          role: "taxa",
          weight: 3,
          misreading: null,
          onlyIf: null,
          answer: {
            kind: "states",
            ordered: false,
            absence: null,
            states: stateIds.map((state) => ({ id: state, name: state, plain: "" })),
          },
        },
        [0, 1, 2, 3].map(() => {
          const shares = [0, 1, 2].map(() => 0.02 + random.uniform() ** 3);
          const sum = shares.reduce((a, b) => a + b, 0);
          return { kind: "frequencies", frequencies: shares.map((share) => share / sum) };
        }),
      ),
    ),
  });
  return { table, findings: Array.from({ length: count }, (_, j) => statesSeen(id(j), `g${j % groups}`, [stateIds[random.below(3)]!])) };
};

const leaderOf = (table: PreparedTable, findings: readonly CharacterEvidence[]): string =>
  posteriorOf(gatherEvidence(table, findings)).leader;

/** Every way to keep, remove or replace each finding. */
const fewestByTrying = (table: PreparedTable, findings: readonly CharacterEvidence[]): number | null => {
  const leader = leaderOf(table, findings);
  let best: number | null = null;
  const go = (j: number, changed: number, kept: readonly CharacterEvidence[]): void => {
    if (best !== null && changed >= best) return;
    if (j === findings.length) {
      if (changed > 0 && leaderOf(table, kept) !== leader) best = changed;
      return;
    }
    const finding = findings[j]!;
    go(j + 1, changed, [...kept, finding]);
    go(j + 1, changed + 1, kept);
    for (const state of stateIds)
      if (state !== finding.states[0]) go(j + 1, changed + 1, [...kept, statesSeen(finding.characterId, finding.group, [state])]);
  };
  go(0, 0, []);
  return best;
};

describe("the least number of wrong looks", () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])("is what trying every change finds, characters independent (seed %i)", (seed) => {
    const { table, findings } = drawn(seed, count);
    expect(robustness(gatherEvidence(table, findings)).leastWrong).toBe(fewestByTrying(table, findings));
  });

  it.each([11, 12, 13, 14])("is never less than what trying finds where groups are shared (seed %i)", (seed) => {
    const { table, findings } = drawn(seed, 3);
    const found = robustness(gatherEvidence(table, findings)).leastWrong;
    const tried = fewestByTrying(table, findings);
    expect(tried).not.toBeNull();
    expect(found === null || found >= tried!).toBe(true);
  });

  it("is null without evidence", () => {
    const { table } = drawn(1, count);
    expect(robustness(gatherEvidence(table, []))).toMatchObject({ leastWrong: null, characterIds: [] });
  });
});

describe("typicality", () => {
  it("is the chance of a report no likelier, counted over every combination", () => {
    const { table, findings } = drawn(21, count);
    const running = gatherEvidence(table, findings);
    const perCharacter = findings.map((finding) =>
      stateIds.map((state) => {
        const one = gatherEvidence(table, [statesSeen(finding.characterId, finding.group, [state])]);
        return Math.exp(one.answered()[0]!.logLikelihoodAt(2));
      }),
    );
    const seen = findings.reduce((product, finding, j) => product * perCharacter[j]![stateIds.indexOf(finding.states[0]!)]!, 1);
    let chance = 0;
    for (let code = 0; code < 3 ** count; code += 1) {
      let product = 1;
      for (let j = 0; j < count; j += 1) product *= perCharacter[j]![Math.floor(code / 3 ** j) % 3]!;
      if (product <= seen * (1 + 1e-9)) chance += product;
    }
    expect(typicality(running, "t2" as TaxonId)).toMatchObject({ method: "exact", characters: count });
    expect(typicality(running, "t2" as TaxonId)!.value).toBeCloseTo(chance, 10);
  });

  it("of one normal measure is its two-sided tail, the same for one seed", () => {
    const length = prepareCharacter(
      { id: id(0), group: "g", role: "taxa", weight: 3, misreading: null, onlyIf: null, answer: { kind: "measure", unit: "mm", minN: 1 } },
      [fittedNormal(10, 2)],
    );
    const table = assembleTable({ taxa: [{ id: "t" as TaxonId, expected: true }], characters: [length] });
    const running = gatherEvidence(table, [valuesMeasured(id(0), "g", [12])], { withinPlantSpread: 0, blunder: 0 });
    const value = typicality(running, "t" as TaxonId, { seed: 3, draws: 20_000 })!.value;
    expect(Math.abs(value - 0.3173)).toBeLessThan(4 * Math.sqrt((0.3173 * 0.6827) / 20_000));
    expect(typicality(running, "t" as TaxonId, { seed: 3, draws: 20_000 })!.value).toBe(value);
    expect(surprises(running, "t" as TaxonId)[0]!.chance).toBeCloseTo(0.3173105, 6);
  });
});
