import { describe, expect, it } from "vitest";
import { angleOf, arcSpans, daysOf, gap, placeOf, pointAt, ringRadii } from "./dial-geometry.js";

describe("the dial", () => {
  it("knows leap years and cuts days outside of the year", () => {
    expect([daysOf(2022), daysOf(2024)]).toEqual([365, 366]);
    expect(placeOf("2022-01-01", 2022)).toBeCloseTo(0.5 / 365, 10);
    expect(placeOf("2021-06-01", 2022)).toBe(0);
    expect(placeOf("2023-06-01", 2022)).toBe(1);
  });

  it("begins and ends beside the gap at the top and has midsummer at the foot", () => {
    expect(angleOf(0)).toBeCloseTo(gap, 12);
    expect(angleOf(1)).toBeCloseTo(2 * Math.PI - gap, 12);
    const [x, y] = pointAt(angleOf(0.5), 100);
    expect([x, y].map((v) => Math.round(v))).toEqual([0, 100]);
  });

  it("lets neighbouring arcs meet half way and none reach far", () => {
    const [a, b, c] = arcSpans(["2022-06-01", "2022-06-21", "2022-09-01"], 2022) as [number, number][] as [
      [number, number],
      [number, number],
      [number, number],
    ];
    expect(a[1]).toBeCloseTo(b[0], 12);
    expect((b[1] - placeOf("2022-06-21", 2022)) * 365).toBeCloseTo(24, 6);
    expect(c[0]).toBeGreaterThan(b[1]);
  });

  it("gives every ring room", () => {
    for (const count of [1, 6, 15]) {
      const { radii, thickness } = ringRadii(count);
      expect(radii).toHaveLength(count);
      expect(Math.min(...radii) - thickness / 2).toBeGreaterThan(80);
    }
  });
});
