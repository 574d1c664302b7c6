import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CharacterId, StateId, TaxonId } from "../base/ids.js";
import type { ScoreDistribution } from "./score-distribution.js";
import { assembleTable, prepareCharacter, type PreparedTable } from "./prepared-table.js";
import { lookedNotThere, statesSeen, valuesMeasured, type CharacterEvidence } from "./evidence-input.js";
import { gatherEvidence, posterior, posteriorOf, probabilitiesOf } from "./posterior.js";
import { startEvidence } from "./running-evidence.js";
import { robustness, surprises } from "./robustness.js";
import { typicality } from "./typicality.js";
import { expectedInformation } from "./information.js";
import { weightOfEvidence } from "./weight-of-evidence.js";
import { fittedNormal } from "./two-piece-normal.js";

const taxonCount = 5;
const taxon = (t: number): TaxonId => `t${t}` as TaxonId;
const stateOf = (s: number): StateId => `s${s}` as StateId;

interface Sketch {
  readonly kind: "states" | "measure" | "count" | "dependent";
  readonly group: string;
  readonly role: "taxa" | "support" | "hybrid-check";
  readonly ordered: boolean;
  readonly cells: readonly { readonly shares: readonly number[]; readonly mean: number; readonly sd: number; readonly say: number }[];
}

const cell = fc.record({
  shares: fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 }),
  mean: fc.double({ min: -50, max: 50, noNaN: true }),
  sd: fc.double({ min: 1e-3, max: 20, noNaN: true }),
  say: fc.nat(9),
});
const sketch: fc.Arbitrary<Sketch> = fc.record({
  kind: fc.constantFrom("states" as const, "states" as const, "measure" as const, "count" as const, "dependent" as const),
  group: fc.constantFrom("leaf", "flower", "fruit"),
  role: fc.constantFrom("taxa" as const, "taxa" as const, "taxa" as const, "support" as const, "hybrid-check" as const),
  ordered: fc.boolean(),
  cells: fc.array(cell, { minLength: taxonCount, maxLength: taxonCount }),
});
const sketches = fc.array(sketch, { minLength: 2, maxLength: 7 });

/** Character 0 is always one of states, so that dependent ones have something to hang on. */
const tableOf = (list: readonly Sketch[], order: readonly number[] = [0, 1, 2, 3, 4]): PreparedTable =>
  assembleTable({
    taxa: order.map((t) => ({ id: taxon(t), expected: t !== 3 })),
    characters: list.map((s, j) => {
      const kind = j === 0 ? "states" : s.kind;
      const distributions = order.map((t): ScoreDistribution => {
        const { shares, mean, sd, say } = s.cells[t]!;
        if (say === 0) return { kind: "unknown" };
        if (say === 1 && kind === "dependent") return { kind: "not-applicable" };
        if (kind === "measure" || kind === "count") return fittedNormal(mean, sd);
        const sum = shares.reduce((a, b) => a + b, 0);
        return { kind: "frequencies", frequencies: shares.map((share) => share / sum) };
      });
      return prepareCharacter(
        {
          id: `c${j}` as CharacterId,
          group: s.group,
          role: s.role,
          weight: 3,
          misreading: null,
          onlyIf: kind === "dependent" ? { character: "c0" as CharacterId, states: [stateOf(1)] } : null,
          answer:
            kind === "measure"
              ? { kind: "measure", unit: "mm", minN: 5 }
              : kind === "count"
                ? { kind: "count", minN: 1 }
                : {
                    kind: "states",
                    ordered: s.ordered,
                    absence: stateOf(0),
                    states: [0, 1, 2].map((i) => ({ id: stateOf(i), name: "x", plain: "" })),
                  },
        },
        distributions,
      );
    }),
  });

const number = fc.oneof(fc.double({ min: -60, max: 60, noNaN: true }), fc.constantFrom(1e300, -1e300, 1e-300, 0, Number.MAX_VALUE));
const evidenceFor = (list: readonly Sketch[]): fc.Arbitrary<readonly CharacterEvidence[]> =>
  fc.tuple(
    ...list.map((s, j) => {
      const id = `c${j}` as CharacterId;
      return j > 0 && (s.kind === "measure" || s.kind === "count")
        ? fc
            .array(number, { minLength: 1, maxLength: 5 })
            .map((values) => valuesMeasured(id, s.group, values, { plusMinus: 0.5, stems: 2 }))
        : fc.oneof(
            fc
              .tuple(
                fc.uniqueArray(fc.nat(2), { minLength: 1, maxLength: 3 }),
                fc.constantFrom("sure" as const, "fairly" as const, "between-two" as const),
              )
              .map(([states, sureness]) => statesSeen(id, s.group, states.map(stateOf), sureness)),
            fc.integer({ min: 1, max: 1000 }).map((n) => lookedNotThere(id, s.group, n)),
          );
    }),
  );
const whole = sketches.chain((list) => fc.record({ list: fc.constant(list), evidence: evidenceFor(list), seed: fc.nat() }));

/** A shuffle decided by a number, so that fast-check can shrink it. */
const shuffled = <T>(items: readonly T[], seed: number): readonly T[] =>
  items
    .map((item, i) => ({ item, key: Math.imul(seed + 1, 2_654_435_761 + i * 40_503) >>> 0 }))
    .sort((a, b) => a.key - b.key)
    .map(({ item }) => item);

describe("chances of taxa", () => {
  it("do not depend on the order of answers, bit for bit", () => {
    fc.assert(
      fc.property(whole, ({ list, evidence, seed }) => {
        const table = tableOf(list);
        const one = gatherEvidence(table, evidence).logJoint();
        const other = gatherEvidence(table, shuffled(evidence, seed)).logJoint();
        expect(other).toEqual(one);
      }),
    );
  });

  it("come back bit for bit when an answer is taken back", () => {
    fc.assert(
      fc.property(whole, ({ list, evidence, seed }) => {
        const running = startEvidence(tableOf(list));
        const before: Float64Array[] = [];
        for (const seen of evidence) {
          before.push(running.logJoint());
          running.answer(seen);
        }
        for (let j = evidence.length - 1; j >= 0; j -= 1) {
          expect(running.takeBack(evidence[j]!.characterId)).toBe(true);
          expect(running.logJoint()).toEqual(before[j]);
        }
        for (const seen of evidence) running.answer(seen);
        for (const seen of shuffled(evidence, seed)) running.takeBack(seen.characterId);
        expect(running.logJoint()).toEqual(before[0]);
      }),
    );
  });

  it("are replaced, not added to, when a character is answered again", () => {
    fc.assert(
      fc.property(whole, ({ list, evidence }) => {
        const running = gatherEvidence(tableOf(list), evidence);
        const once = running.logJoint();
        for (const seen of evidence) running.answer(seen);
        expect(running.logJoint()).toEqual(once);
      }),
    );
  });

  it("are permuted when the taxa are", () => {
    fc.assert(
      fc.property(whole, ({ list, evidence, seed }) => {
        const order = shuffled([0, 1, 2, 3, 4], seed);
        const one = probabilitiesOf(gatherEvidence(tableOf(list), evidence));
        const other = probabilitiesOf(gatherEvidence(tableOf(list, order), evidence));
        order.forEach((t, at) => expect(Math.abs(other[at]! - one[t]!)).toBeLessThan(1e-9));
        expect(Math.abs(other[taxonCount]! - one[taxonCount]!)).toBeLessThan(1e-9);
      }),
    );
  });

  it("lie in 0 to 1 and sum to 1, also with absurd input, and no number is NaN", () => {
    fc.assert(
      fc.property(whole, ({ list, evidence }) => {
        const table = tableOf(list);
        const result = posterior(table, evidence);
        const all = [...result.taxa, result.noneOfThese];
        expect(Math.abs(all.reduce((sum, chance) => sum + chance.probability, 0) - 1)).toBeLessThan(1e-12);
        for (const chance of all) {
          expect(chance.probability).toBeGreaterThanOrEqual(0);
          expect(chance.probability).toBeLessThanOrEqual(1);
          expect(Number.isFinite(chance.log10Odds)).toBe(true);
          expect(chance.evenPriorProbability).toBeGreaterThanOrEqual(0);
          expect(chance.evenPriorProbability).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  it("are explained by weights that sum to the log odds", () => {
    fc.assert(
      fc.property(whole, ({ list, evidence }) => {
        const running = gatherEvidence(tableOf(list), evidence);
        const joint = running.logJoint();
        const weights = weightOfEvidence(running, taxon(0), "none-of-these");
        const want = (10 / Math.LN10) * (joint[0]! - joint[taxonCount]!);
        expect(Math.abs(weights.total - want)).toBeLessThan(1e-9 * Math.max(1, Math.abs(want)));
      }),
    );
  });

  it("come with robustness, surprise, typicality and information that are never NaN", () => {
    fc.assert(
      fc.property(whole, ({ list, evidence }) => {
        const running = gatherEvidence(tableOf(list), evidence);
        const found = robustness(running);
        expect(found.leastWrong === null || (found.leastWrong >= 1 && found.leastWrong === found.characterIds.length)).toBe(true);
        for (const { chance } of surprises(running, taxon(1))) {
          expect(chance).toBeGreaterThanOrEqual(0);
          expect(chance).toBeLessThanOrEqual(1);
        }
        const fit = typicality(running, taxon(1), { draws: 100 });
        if (fit !== null) expect(fit.value >= 0 && fit.value <= 1).toBe(true);
        for (let j = 0; j < list.length; j += 1) {
          const information = expectedInformation(running, `c${j}` as CharacterId)!;
          expect(information.plainBits).toBeGreaterThanOrEqual(0);
          expect(information.plainBits).toBeLessThanOrEqual(Math.log2(taxonCount + 1) + 1e-6);
          expect(information.bits).toBeLessThanOrEqual(information.plainBits + 1e-12);
        }
      }),
      { numRuns: 40 },
    );
  });

  it("leave a prior of zero alive: it never removes a taxon", () => {
    const list: Sketch = {
      kind: "states",
      group: "g",
      role: "taxa",
      ordered: false,
      cells: Array.from({ length: 5 }, () => ({ shares: [1, 1, 1], mean: 0, sd: 1, say: 5 })),
    };
    const result = posteriorOf(startEvidence(tableOf([list]), { priors: { t0: 0 } }));
    expect(result.taxa[0]!.probability).toBeGreaterThan(0);
    expect(result.taxa[3]!.probability / result.taxa[1]!.probability).toBeCloseTo(0.1, 12);
  });
});
