import { describe, expect, it } from "vitest";
import { gowerDistances, gowerPairIndex } from "../../../src/engine/index.js";
import { allComparisons, flower, isThere, why } from "./distances.js";

const total = (distances: Float64Array): number => distances.reduce((sum, d) => sum + d, 0);

describe("Gower's distance as daisy gives it", () => {
  it("of four plants with a missing length and a gap in the ordered lobes", () => {
    const d = gowerDistances([
      { kind: "numeric", values: [10, 14, 8, null] },
      { kind: "nominal", values: ["yes", "no", "yes", "yes"] },
      { kind: "nominal", values: ["white", "pink", "pink", "white"] },
      { kind: "ordinal", values: [1, 3, 2, 5] },
    ]);
    [0.8333333333, 0.4166666667, 0.3333333333, 0.5833333333, 0.7777777778, 0.5555555556].forEach((want, k) =>
      expect(Math.abs(d[k]! - want)).toBeLessThan(0.5e-10),
    );
  });

  it.skipIf(!isThere)(`of all pairs of the flower data and of forty species of the plant traits, cells missing${why}`, () => {
    const compared = allComparisons();
    expect(compared.map(({ pairs }) => pairs)).toEqual([153, 153, 153, 780, 780]);
    for (const { file, greatest } of compared) expect(greatest, file).toBeLessThan(1.5e-12);
  });

  it.skipIf(!isThere)(`of the flower data adds up as printed${why}`, () => {
    expect(Math.abs(total(flower(["V3"])) - 77.99351657)).toBeLessThan(0.5e-8);
    const two = flower(["V1", "V3"], ["V2"]);
    expect(Math.abs(total(two) - 79.8093643)).toBeLessThan(0.5e-7);
    expect(Math.abs(two[gowerPairIndex(18, 0, 2)]! - 0.6025676937)).toBeLessThan(0.5e-10);
  });

  it("of sets of states is one minus the shared part", () => {
    const d = gowerDistances([{ kind: "sets", values: [["a", "b"], ["b", "c"], [], null, []] }]);
    expect(d[gowerPairIndex(5, 0, 1)]).toBeCloseTo(2 / 3, 15);
    expect(d[gowerPairIndex(5, 2, 4)]).toBe(0);
    expect(d[gowerPairIndex(5, 3, 0)]).toBeNaN();
  });
});
