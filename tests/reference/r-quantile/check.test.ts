import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { quantile, type QuantileType } from "../../../src/engine/index.js";

interface Values {
  readonly made: string;
  readonly p: readonly number[];
  readonly samples: Readonly<Record<string, readonly number[]>>;
  readonly quantiles: readonly { readonly sample: string; readonly type: QuantileType; readonly quantiles: readonly number[] }[];
}
const values = JSON.parse(readFileSync(new URL("values.json", import.meta.url), "utf8")) as Values;

describe(`quantiles as ${values.made} gives them`, () => {
  it.each(values.quantiles.map((row) => [row.sample, row.type, row.quantiles] as const))("%s, type %i", (sample, type, expected) => {
    values.p.forEach((p, i) => {
      const want = expected[i]!;
      const got = quantile(values.samples[sample]!, p, type);
      expect(Math.abs(got - want), `p = ${p}`).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(want)));
    });
  });
});
