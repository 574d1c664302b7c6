import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expBelow } from "./exp-below.js";

const expOfNegative = (x: number): number => {
  const into = new Float64Array(1);
  expBelow(Float64Array.of(x), 0, into, -1);
  return into[0]!;
};

describe("exp of what is not positive", () => {
  it("is within two units in the last place of the library's", () => {
    fc.assert(
      fc.property(fc.double({ min: -708, max: 0, noNaN: true }), (x) => {
        expect(Math.abs(expOfNegative(x) / Math.exp(x) - 1)).toBeLessThanOrEqual(2 ** -51);
      }),
      { numRuns: 5000 },
    );
  });

  it("is exactly 1 at 0, goes to 0 at the end, and differs by the least doubles before", () => {
    expect(expOfNegative(0)).toBe(1);
    expect(expOfNegative(-0)).toBe(1);
    expect(expOfNegative(-Infinity)).toBe(0);
    expect(expOfNegative(-1e300)).toBe(0);
    expect(expOfNegative(Number.NaN)).toBeNaN();
    for (let x = -746; x < -708; x += 0.013)
      expect(Math.abs(expOfNegative(x) - Math.exp(x))).toBeLessThanOrEqual(2 ** -51 * Math.exp(x) + 1e-323);
  });

  it("is taken in place, below the highest, and summed without the one left out", () => {
    const x = Float64Array.of(1, 0, -Infinity, 0.5);
    expect(expBelow(x, 1, x, 0)).toBeCloseTo(Math.exp(-1) + Math.exp(-0.5), 14);
    expect([...x].map((value) => value.toFixed(12))).toEqual([1, Math.exp(-1), 0, Math.exp(-0.5)].map((value) => value.toFixed(12)));
  });
});
