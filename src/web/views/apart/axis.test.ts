import { describe, expect, it } from "vitest";
import { axisOf, placeOn } from "./axis.js";

const range = (min: number, low: number, high: number, max: number) => ({ min, low, high, max });

describe("the common axis", () => {
  it("holds every extreme and does not run below nought", () => {
    const axis = axisOf([range(1, 2, 3, 4), null, range(3, 5, 9, 21)]);
    expect(axis?.from).toBeGreaterThanOrEqual(0);
    expect(axis?.from).toBeLessThan(1);
    expect(axis?.to).toBeGreaterThan(21);
  });

  it("has no axis without a measure, and a wide one for a single value", () => {
    expect(axisOf([null, null])).toBeNull();
    const axis = axisOf([range(5, 5, 5, 5)]);
    expect(axis).not.toBeNull();
    expect(placeOn(axis!, 5)).toBeCloseTo(0.5, 6);
  });
});
