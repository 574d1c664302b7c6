import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
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
const path = join(shared, "data/matrices/iris.csv");
const expected = JSON.parse(readFileSync(new URL("values.json", import.meta.url), "utf8")) as {
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

describe(`irises left out one by one, as ${expected.program} GaussianNB`, () => {
  it.skipIf(!existsSync(path))(
    `gives the same probabilities, right names and log loss${existsSync(path) ? "" : ` (skipped: ${path} is absent)`}`,
    () => {
      const rows = readFileSync(path, "utf8")
        .trim()
        .split("\n")
        .slice(1)
        .map((line) => line.split(","))
        .map((parts) => ({ values: parts.slice(0, 4).map(Number), species: parts[4]!.replaceAll('"', "").trim() }));
      expect(rows).toHaveLength(expected.of);
      let correct = 0;
      let loss = 0;
      rows.forEach((row, i) => {
        const probabilities = probabilitiesWithout(rows, i);
        const own = probabilities[species.indexOf(row.species)]!;
        expect(Math.abs(own - expected.ofTheTrueSpecies[i]!), `row ${i}`).toBeLessThan(1e-9 * own);
        if (own === Math.max(...probabilities)) correct += 1;
        loss -= Math.log(own) / rows.length;
      });
      expect(correct).toBe(expected.correct);
      expect(Math.abs(loss - expected.logLoss)).toBeLessThan(1e-9);
    },
  );
});
