import { expect, it } from "vitest";
import { demoYear } from "../../../tests/support/demo-year.js";
import type { IsoDate } from "../base/dates.js";
import type { PlantId } from "../base/ids.js";
import { happening } from "../characters/followed-plant.js";
import { settledRule } from "../characters/book-content.js";
import { caseByRule } from "./case-by-rule.js";
import { nextChecks } from "./next-check.js";

const { content } = demoYear();
const table = content.tables[0]!;
const lostOn = (day: string, happened: { readonly kind: string; readonly date: string }) => {
  const happenings = [happening.parse({ id: "h", plantId: "P6" as PlantId, endsYear: true, ...happened })];
  const evidence = { looks: content.looks.filter((l) => l.plantId === "P6"), readings: content.readings.filter((r) => r.plantId === "P6") };
  const rule = caseByRule({ table, evidence, rivalIds: [], happenings, rule: settledRule.parse({}), upTo: null });
  return nextChecks(table, rule.scores, rule.outcome, rule.findings, happenings, day as IsoDate, () => null)[0]!.lostThisYear;
};

it("loses the year of a mowing, not the next", () => {
  expect(lostOn("2022-08-01", { kind: "mown", date: "2022-07-20" })).toMatchObject({ nextYearBefore: "2023-07-18" });
  expect(lostOn("2023-08-01", { kind: "mown", date: "2022-07-20" })).toBeNull();
});

it("gives a day that exists after a loss on 29 February", () => {
  expect(lostOn("2024-03-01", { kind: "flooded", date: "2024-02-29" })).toMatchObject({ nextYearBefore: "2025-02-27" });
});

it("never waits for a plant that died", () => {
  expect(lostOn("2025-08-01", { kind: "died", date: "2022-09-01" })).toMatchObject({ kind: "died", nextYearBefore: null });
});
