import fc from "fast-check";
import { expect, it } from "vitest";
import { shiftTime } from "../base/dates.js";
import type { LocalTime } from "../base/dates.js";
import { clockShift, countInside } from "./clock-shift.js";

const zero = "2024-05-01T10:00:00" as LocalTime;
const time = fc.integer({ min: 0, max: 900 }).map((s) => shiftTime(zero, s));
const stop = fc
  .tuple(fc.integer({ min: 0, max: 900 }), fc.integer({ min: 0, max: 120 }))
  .map(([from, length]) => ({ from: shiftTime(zero, from), to: shiftTime(zero, from + length) }));

it("no shift whatever does better than the one the sweep finds", () => {
  fc.assert(
    fc.property(fc.array(time, { minLength: 1, maxLength: 12 }), fc.array(stop, { minLength: 1, maxLength: 5 }), (photos, stops) => {
      const found = clockShift(photos, stops);
      let most = 0;
      for (let shift = -1100; shift <= 1100; shift += 1) most = Math.max(most, countInside(photos, stops, shift));
      expect(found.insideAfter).toBe(most);
      expect(found.insideBefore).toBe(countInside(photos, stops, 0));
      for (const shift of [found.equallyGood!.fromS, found.equallyGood!.toS]) expect(countInside(photos, stops, shift)).toBe(most);
      expect(countInside(photos, stops, found.equallyGood!.fromS - 1)).toBeLessThanOrEqual(most);
    }),
    { numRuns: 25 },
  );
});

it("the order of photographs and stops does not matter, and moving the camera moves the answer", () => {
  fc.assert(
    fc.property(
      fc.array(time, { minLength: 5, maxLength: 20 }),
      fc.array(stop, { minLength: 2, maxLength: 5 }),
      fc.integer({ min: -5000, max: 5000 }),
      (photos, stops, by) => {
        const found = clockShift(photos, stops);
        expect(clockShift([...photos].reverse(), [...stops].reverse())).toEqual(found);
        const moved = clockShift(
          photos.map((photo) => shiftTime(photo, by)),
          stops,
        );
        expect(moved.insideAfter).toBe(found.insideAfter);
      },
    ),
    { numRuns: 50 },
  );
});
