import fc from "fast-check";
import { expect, it } from "vitest";
import { median, quantile } from "./quantile.js";

const finite = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 40 });

it("stays inside the data and rises with p, for every type", () => {
  fc.assert(
    fc.property(
      finite,
      fc.constantFrom(1, 2, 3, 4, 5, 6, 7, 8, 9) as fc.Arbitrary<1 | 7>,
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (values, type, p, q) => {
        const [low, high] = [quantile(values, Math.min(p, q), type), quantile(values, Math.max(p, q), type)];
        expect(low).toBeLessThanOrEqual(high + 1e-9 * Math.max(1, Math.abs(high)));
        expect(low).toBeGreaterThanOrEqual(Math.min(...values) - 1e-9);
        expect(high).toBeLessThanOrEqual(Math.max(...values) + 1e-9);
      },
    ),
  );
});

it("refuses nothing, NaN and p outside 0-1", () => {
  expect(() => quantile([], 0.5)).toThrow(RangeError);
  expect(() => quantile([1, Number.NaN], 0.5)).toThrow(RangeError);
  expect(() => quantile([1], 1.2)).toThrow(RangeError);
  expect(median([3, 1, 2, 10])).toBe(2.5);
});
