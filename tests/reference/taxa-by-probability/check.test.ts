import { describe, expect, it } from "vitest";
import {
  assembleTable,
  characterId,
  distributionOfScore,
  fitLogNormal,
  fittedNormal,
  informationOfOutcomes,
  informationOfValues,
  posterior,
  prepareCharacter,
  rangeWidthInSd,
  stateId,
  statesSeen,
  taxonId,
  valuesMeasured,
  type PreparedTable,
} from "../../../src/engine/index.js";

/** Half of the last digit printed, but never finer than double precision. */
const printed = (got: number, want: string): void => {
  const [digits, exponent = "0"] = want.split("e");
  const decimals = (digits!.split(".")[1] ?? "").length - Number(exponent);
  expect(Math.abs(got - Number(want)), `${got} against ${want}`).toBeLessThanOrEqual(Math.max(0.5000001 * 10 ** -decimals, 4e-16));
};

const plus = stateId.parse("plus");
const minus = stateId.parse("minus");
const taxonOf = (t: number) => taxonId.parse(`t${t + 1}`);
const testOf = (j: number) => characterId.parse(`test${j + 1}`);

const binary = (j: number, chances: readonly number[], misreading: number) =>
  prepareCharacter(
    {
      id: testOf(j),
      group: `test ${j + 1}`,
      role: "taxa",
      weight: 3,
      misreading,
      onlyIf: null,
      answer: { kind: "states", ordered: false, absence: null, states: [plus, minus].map((id) => ({ id, name: id, plain: "" })) },
    },
    chances.map((p) => ({ kind: "frequencies", frequencies: [p, 1 - p] })),
  );

const matrix = [
  [0.99, 0.01, 0.95, 0.1, 0.5],
  [0.9, 0.05, 0.1, 0.8, 0.5],
  [0.01, 0.99, 0.95, 0.2, 0.85],
  [0.5, 0.5, 0.99, 0.01, 0.05],
];
const bacteria: PreparedTable = assembleTable({
  taxa: matrix.map((_, t) => ({ id: taxonOf(t), expected: true })),
  characters: [0, 1, 2, 3, 4].map((j) =>
    binary(
      j,
      matrix.map((row) => row[j]!),
      0,
    ),
  ),
});
const seen = [plus, minus, plus, minus, plus].map((state, j) => statesSeen(testOf(j), `test ${j + 1}`, [state]));

describe("probabilities of taxa", () => {
  it("are the identification scores of a matrix of test results", () => {
    const { taxa, leader, runnerUp } = posterior(bacteria, seen, { noneOfThese: 0 });
    ["0.952562369", "0.0194380649", "0.000146865379", "0.0278527008"].forEach((want, t) => printed(taxa[t]!.probability, want));
    expect([leader, runnerUp]).toEqual(["t1", "t4"]);
  });

  it("leave room for none of these", () => {
    const { taxa, noneOfThese } = posterior(bacteria, seen, { noneOfThese: 0.05, background: "even" });
    ["0.938524890", "0.0191516149", "0.0001447011", "0.0274422482"].forEach((want, t) => printed(taxa[t]!.probability, want));
    printed(noneOfThese.probability, "0.0147365458");
  });

  it("take priors, misreading and a measured length together", () => {
    const length = prepareCharacter(
      {
        id: characterId.parse("length"),
        group: "length",
        role: "taxa",
        weight: 3,
        misreading: null,
        onlyIf: null,
        answer: { kind: "measure", unit: "mm", minN: 1 },
      },
      [fittedNormal(10, 2), fittedNormal(14, 2), fittedNormal(30, 3)],
    );
    const table = assembleTable({
      taxa: [0, 1, 2].map((t) => ({ id: taxonOf(t), expected: true })),
      characters: [binary(0, [0.9, 0.2, 0.5], 0.05), length],
    });
    const { taxa } = posterior(table, [statesSeen(testOf(0), "test 1", [plus]), valuesMeasured(length.id, "length", [13])], {
      priors: { t1: 0.5, t2: 0.3, t3: 0.2 },
      noneOfThese: 0,
      blunder: 0,
      withinPlantSpread: 0,
    });
    ["0.696286965", "0.303713000", "3.53973e-8"].forEach((want, t) => printed(taxa[t]!.probability, want));
  });
});

describe("printed ranges", () => {
  const measure = { id: characterId.parse("x"), answer: { kind: "measure" as const, unit: "mm", minN: 5 } };

  it("give the spread of the core at 10 and 90 %", () => {
    const d = distributionOfScore({ kind: "range", min: null, low: 10, high: 14, max: null }, measure);
    if (d.kind !== "two-piece-normal") throw new TypeError("expected a distribution of values");
    printed(d.sdLow, "1.560608");
    printed(d.sdHigh, "1.560608");
    expect(d.mode).toBeCloseTo(12, 12);
  });

  it.each([
    [0.05, "1.215914"],
    [0.025, "1.020427"],
  ])("give the spread with %d in each tail of the core", (coreTail, want) => {
    const d = distributionOfScore({ kind: "range", min: null, low: 10, high: 14, max: null }, measure, {
      coreTail,
      extremeTail: 0.005,
      bareRangePlants: null,
    });
    if (d.kind !== "two-piece-normal") throw new TypeError("expected a distribution of values");
    printed(d.sdLow, want);
  });

  it("are log-normal where skewed and positive", () => {
    const points = [0.005, 0.1, 0.9, 0.995].map((share, i) => ({ share, value: [3, 5, 12, 20][i]! }));
    const { mu, sigma, rss } = fitLogNormal(points);
    printed(mu, "2.0471722811");
    expect(Math.abs(sigma - 0.3629587397)).toBeLessThan(1e-8);
    printed(rss, "0.0018754");
    const d = distributionOfScore({ kind: "range", min: 3, low: 5, high: 12, max: 20 }, measure);
    expect(d.kind === "two-piece-normal" && d.scale).toBe("log");
  });

  it("of n plants are d2 standard deviations wide", () => {
    const table = {
      2: "1.128379",
      3: "1.692569",
      5: "2.325929",
      10: "3.077505",
      20: "3.734950",
      30: "4.085522",
      50: "4.498147",
      100: "5.015187",
    };
    for (const [n, want] of Object.entries(table)) printed(rangeWidthInSd(Number(n)), want);
  });
});

describe("expected information", () => {
  const posteriorNow = [0.5, 0.3, 0.15, 0.05];

  it("of states", () => {
    printed(
      informationOfOutcomes(
        posteriorNow,
        [0.9, 0.2, 0.5, 0].map((p) => [p, 1 - p]),
      ),
      "0.37797523954861",
    );
    const rows = [
      [0.8, 0.2, 0],
      [0.1, 0.6, 0.3],
      [0, 0.1, 0.9],
      [0.33, 0.33, 0.34],
    ];
    printed(informationOfOutcomes(posteriorNow, rows), "0.6397209272458111");
    const certain = [0, 1, 2, 3].map((t) => [0, 1, 2, 3].map((x) => (x === t ? 1 : 0)));
    printed(informationOfOutcomes(posteriorNow, certain), "1.647730922119161");
  });

  const normals = (list: readonly (readonly [number, number, number])[]) =>
    list.map(([probability, mean, sd]) => ({ probability, distribution: fittedNormal(mean, sd) }));

  it.each([
    [0.5, "0.0437299629"],
    [1, "0.1607472198"],
    [1.5, "0.3190820614"],
    [2, "0.4859441541"],
    [3, "0.7599790078"],
    [4, "0.9128222858"],
    [6, "0.9944467097"],
  ])("of a measure whose two taxa lie %d spreads apart", (d, want) => {
    printed(
      informationOfValues(
        normals([
          [0.5, 0, 1],
          [0.5, d, 1],
        ]),
      ),
      want,
    );
  });

  it("of a measure in three taxa of unlike spread", () => {
    printed(
      informationOfValues(
        normals([
          [0.5, 10, 2],
          [0.3, 14, 2],
          [0.2, 30, 3],
        ]),
      ),
      "1.0892970210",
    );
  });

  it.each([
    [0.1, "0.4858765968"],
    [0.5, "0.4842604862"],
    [1, "0.4792744886"],
    [2, "0.4602433483"],
    [5, "0.3797506418"],
  ])("falls with rounding to steps of %d", (step, want) => {
    printed(
      informationOfValues(
        normals([
          [0.5, 10, 2],
          [0.5, 14, 2],
        ]),
        step,
      ),
      want,
    );
  });
});
