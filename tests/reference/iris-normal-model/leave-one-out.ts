/** Fisher's irises, each left out in turn and named by normal distributions fitted to the others. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { join } from "node:path";
import {
  assembleTable,
  characterId,
  fittedNormal,
  posterior,
  prepareCharacter,
  taxonId,
  valuesMeasured,
} from "../../../src/engine/index.js";

const shared = process.env.STIPULE_SHARED ?? fileURLToPath(new URL("../../../../shared", import.meta.url));
/** Where the data lie; they may be absent. */
export const irisPath = join(shared, "data/matrices/iris.csv");
/** What the other program gave. */
export const irisExpected = JSON.parse(readFileSync(new URL("values.json", import.meta.url), "utf8")) as {
  readonly program: string;
  readonly correct: number;
  readonly of: number;
  readonly logLoss: number;
  readonly ofTheTrueSpecies: readonly number[];
};

const species = ["setosa", "versicolor", "virginica"];
const names = ["sepal_length", "sepal_width", "petal_length", "petal_width"].map((name) => characterId.parse(name));

const probabilitiesWithout = (rows: readonly { values: readonly number[]; species: string }[], out: number): readonly number[] => {
  const characters = names.map((id, j) =>
    prepareCharacter(
      { id, group: id, role: "taxa", weight: 3, misreading: null, onlyIf: null, answer: { kind: "measure", unit: "cm", minN: 1 } },
      species.map((name) => {
        const x = rows.filter((row, i) => i !== out && row.species === name).map((row) => row.values[j]!);
        const mean = x.reduce((a, b) => a + b, 0) / x.length;
        return fittedNormal(mean, Math.sqrt(x.reduce((a, b) => a + (b - mean) ** 2, 0) / x.length));
      }),
    ),
  );
  const table = assembleTable({ taxa: species.map((name) => ({ id: taxonId.parse(name), expected: true })), characters });
  const findings = names.map((id, j) => valuesMeasured(id, id, [rows[out]!.values[j]!]));
  return posterior(table, findings, { noneOfThese: 0, blunder: 0, withinPlantSpread: 0 }).taxa.map((taxon) => taxon.probability);
};

/** Chance of the true species for each flower, how many were named rightly, and the mean of -log of those chances. */
export const leaveOneOut = (): { readonly own: readonly number[]; readonly correct: number; readonly logLoss: number } => {
  const rows = readFileSync(irisPath, "utf8")
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => line.split(","))
    .map((parts) => ({ values: parts.slice(0, 4).map(Number), species: parts[4]!.replaceAll('"', "").trim() }));
  const named = rows.map((row, i) => {
    const probabilities = probabilitiesWithout(rows, i);
    const own = probabilities[species.indexOf(row.species)]!;
    return { own, isRight: own === Math.max(...probabilities) };
  });
  return {
    own: named.map(({ own }) => own),
    correct: named.filter(({ isRight }) => isRight).length,
    logLoss: named.reduce((sum, { own }) => sum - Math.log(own) / rows.length, 0),
  };
};
