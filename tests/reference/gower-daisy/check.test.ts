import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { gowerDistances, gowerPairIndex, type GowerColumn } from "../../../src/engine/index.js";

const shared = process.env.STIPULE_SHARED ?? fileURLToPath(new URL("../../../../shared", import.meta.url));
const matrices = join(shared, "data/matrices");
const isThere = existsSync(join(matrices, "flower.csv"));
const why = isThere ? "" : ` (skipped: ${matrices} is absent)`;

const readTable = (name: string): { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] } => {
  const [head, ...rows] = readFileSync(join(matrices, name), "utf8")
    .trim()
    .split(/\r?\n/)
    .map((line) => line.split(",").map((part) => part.replaceAll('"', "")));
  return { head: head!, rows };
};
const column = (
  table: ReturnType<typeof readTable>,
  name: string,
  kind: "numeric" | "ordinal" | "nominal" | "symmetric-binary" | "asymmetric-binary",
): GowerColumn => {
  const at = table.head.indexOf(name);
  return { kind, values: table.rows.map((row) => (row[at] === "NA" ? null : Number(row[at]))) };
};
const compare = (distances: Float64Array, n: number, file: string): number => {
  const { rows } = readTable(file);
  for (const [i, j, d] of rows) {
    expect(Math.abs(distances[gowerPairIndex(n, Number(i) - 1, Number(j) - 1)]! - Number(d)), `${file} ${i} ${j}`).toBeLessThan(1.5e-12);
  }
  return rows.length;
};
const flower = (asymmetric: readonly string[], symmetric: readonly string[] = []): Float64Array => {
  const table = readTable("flower.csv");
  return gowerDistances(
    table.head.slice(1).map((name) => {
      if (asymmetric.includes(name)) return column(table, name, "asymmetric-binary");
      if (symmetric.includes(name)) return column(table, name, "symmetric-binary");
      return column(table, name, ["V1", "V2", "V3", "V4"].includes(name) ? "nominal" : ["V5", "V6"].includes(name) ? "ordinal" : "numeric");
    }),
  );
};
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

  it.skipIf(!isThere)(`of all pairs of the flower data${why}`, () => {
    expect(compare(flower([]), 18, "flower_gower_default.csv")).toBe(153);
    expect(compare(flower(["V3"]), 18, "flower_gower_asymm3.csv")).toBe(153);
    expect(Math.abs(total(flower(["V3"])) - 77.99351657)).toBeLessThan(0.5e-8);
    const two = flower(["V1", "V3"], ["V2"]);
    expect(Math.abs(total(two) - 79.8093643)).toBeLessThan(0.5e-7);
    expect(Math.abs(two[gowerPairIndex(18, 0, 2)]! - 0.6025676937)).toBeLessThan(0.5e-10);
    const ranked = readTable("flower.csv");
    const mixed = gowerDistances(
      ranked.head
        .slice(1)
        .map((name) =>
          column(
            ranked,
            name,
            ["V1", "V3"].includes(name)
              ? "asymmetric-binary"
              : ["V2", "V4"].includes(name)
                ? "nominal"
                : name === "V8"
                  ? "numeric"
                  : "ordinal",
          ),
        ),
    );
    expect(compare(mixed, 18, "flower_gower_asymm1_3_ordratio7.csv")).toBe(153);
  });

  it.skipIf(!isThere)(`of forty species of the plant traits, cells missing${why}`, () => {
    const table = readTable("plantTraits.csv");
    const names = table.head.slice(1);
    const kinds = names.map((_, k) =>
      k < 3
        ? ("numeric" as const)
        : k < 11
          ? ("ordinal" as const)
          : k < 13
            ? ("symmetric-binary" as const)
            : ("asymmetric-binary" as const),
    );
    const typed = gowerDistances(names.map((name, k) => column(table, name, kinds[k]!)));
    expect(compare(typed, 136, "plantTraits_gower_first40.csv")).toBe(780);
    const plain = gowerDistances(names.map((name, k) => column(table, name, k < 3 ? "numeric" : k < 11 ? "ordinal" : "nominal")));
    expect(compare(plain, 136, "plantTraits_gower_plain_first40.csv")).toBe(780);
  });

  it("of sets of states is one minus the shared part", () => {
    const d = gowerDistances([{ kind: "sets", values: [["a", "b"], ["b", "c"], [], null, []] }]);
    expect(d[gowerPairIndex(5, 0, 1)]).toBeCloseTo(2 / 3, 15);
    expect(d[gowerPairIndex(5, 2, 4)]).toBe(0);
    expect(d[gowerPairIndex(5, 3, 0)]).toBeNaN();
  });
});
