import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { logNormalCdf, logNormalInterval, normalCdf, normalQuantile } from "../../../src/engine/index.js";
import { randomSource, randomSourceFromState } from "../../../src/engine/base/random.js";

const values = JSON.parse(readFileSync(new URL("values.json", import.meta.url), "utf8")) as {
  readonly program: string;
  readonly logCdf: readonly (readonly [number, number])[];
  readonly logBetween: readonly (readonly [number, number, number])[];
  readonly quantile: readonly (readonly [number, number])[];
};
const close = (got: number, want: number, what: string): void =>
  expect(Math.abs(got - want), `${what}: ${got} against ${want}`).toBeLessThanOrEqual(Math.max(2e-15, 2e-13 * Math.abs(want)));

describe(`the normal integral as ${values.program}`, () => {
  it("gives logs of chances far in the tails", () => {
    for (const [z, want] of values.logCdf) {
      close(logNormalCdf(z), want, `log cdf at ${z}`);
      if (z > -37) close(Math.log(normalCdf(z)), want, `cdf at ${z}`);
    }
  });
  it("gives logs of chances between two points", () => {
    for (const [a, b, want] of values.logBetween)
      expect(Math.abs(logNormalInterval(a, b) - want), `${a} to ${b}`).toBeLessThan(1e-11 * Math.max(1, Math.abs(want)));
  });
  it("finds the point below which a share lies", () => {
    for (const [p, want] of values.quantile) close(normalQuantile(p), want, `quantile ${p}`);
  });
});

describe("seeded chance", () => {
  it("follows the published rule of xoshiro128**", () => {
    const random = randomSourceFromState([1, 2, 3, 4]);
    const want = [11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804];
    expect(want.map(() => random.bits())).toEqual(want);
  });
  it("is the same for one seed, differs between seeds, and its deviates have mean 0 and spread 1", () => {
    expect(randomSource(7).uniform()).toBe(randomSource(7).uniform());
    expect(randomSource(7).uniform()).not.toBe(randomSource(8).uniform());
    const random = randomSource(1);
    const draws = Array.from({ length: 20_000 }, () => random.normal());
    const mean = draws.reduce((a, b) => a + b, 0) / draws.length;
    expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(draws.length));
    expect(Math.abs(draws.reduce((a, b) => a + (b - mean) ** 2, 0) / draws.length - 1)).toBeLessThan(0.04);
    expect(() => randomSource(0.5)).toThrow(RangeError);
  });
});
