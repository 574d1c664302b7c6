/** The data sets with published Gower distances, and how far ours are from them. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gowerDistances, gowerPairIndex, type GowerColumn } from "../../../src/engine/index.js";

const shared = process.env.STIPULE_SHARED ?? fileURLToPath(new URL("../../../../shared", import.meta.url));
const matrices = join(shared, "data/matrices");
export const isThere = existsSync(join(matrices, "flower.csv"));
export const why = isThere ? "" : ` (skipped: ${matrices} is absent)`;

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
/** Over all pairs of a file: how many, and the greatest difference of a distance. */
const compare = (distances: Float64Array, n: number, file: string): { readonly pairs: number; readonly greatest: number } => {
  const { rows } = readTable(file);
  const differences = rows.map(([i, j, d]) => Math.abs(distances[gowerPairIndex(n, Number(i) - 1, Number(j) - 1)]! - Number(d)));
  return { pairs: rows.length, greatest: Math.max(...differences) };
};
export const flower = (asymmetric: readonly string[], symmetric: readonly string[] = []): Float64Array => {
  const table = readTable("flower.csv");
  return gowerDistances(
    table.head.slice(1).map((name) => {
      if (asymmetric.includes(name)) return column(table, name, "asymmetric-binary");
      if (symmetric.includes(name)) return column(table, name, "symmetric-binary");
      return column(table, name, ["V1", "V2", "V3", "V4"].includes(name) ? "nominal" : ["V5", "V6"].includes(name) ? "ordinal" : "numeric");
    }),
  );
};

const flowerTable = (): ReturnType<typeof readTable> => readTable("flower.csv");
/** The flower data with two characters asymmetric, one numeric, the others ranked or named. */
const flowerMixed = (): Float64Array =>
  gowerDistances(
    flowerTable()
      .head.slice(1)
      .map((name) =>
        column(
          flowerTable(),
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
type Kind = Parameters<typeof column>[2];
const traits = (kindOf: (k: number) => Kind): Float64Array => {
  const table = readTable("plantTraits.csv");
  return gowerDistances(table.head.slice(1).map((name, k) => column(table, name, kindOf(k))));
};

/** Every published set of distances against ours. */
export const allComparisons = (): readonly { readonly file: string; readonly pairs: number; readonly greatest: number }[] =>
  (
    [
      ["flower_gower_default.csv", 18, flower([])],
      ["flower_gower_asymm3.csv", 18, flower(["V3"])],
      ["flower_gower_asymm1_3_ordratio7.csv", 18, flowerMixed()],
      [
        "plantTraits_gower_first40.csv",
        136,
        traits((k) => (k < 3 ? "numeric" : k < 11 ? "ordinal" : k < 13 ? "symmetric-binary" : "asymmetric-binary")),
      ],
      ["plantTraits_gower_plain_first40.csv", 136, traits((k) => (k < 3 ? "numeric" : k < 11 ? "ordinal" : "nominal"))],
    ] as const
  ).map(([file, n, distances]) => ({ file, ...compare(distances, n, file) }));
