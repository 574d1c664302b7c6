import { expect, it } from "vitest";
import type { CharacterId } from "../base/ids.js";
import { reading } from "./evidence.js";
import { ratiosOf } from "./ratios.js";

const series = (id: string, characterId: string, values: readonly number[], outingId = "V1") =>
  reading.parse({ id, plantId: "P", outingId, characterId, date: "2022-05-29", unit: "mm", values });
const ratios = (...readings: ReturnType<typeof series>[]) => ratiosOf(readings, "len" as CharacterId, "wid" as CharacterId).values;

it("pairs series by series, organ by organ, as far as the shorter goes", () => {
  expect(ratios(series("a", "len", [8, 9]), series("b", "wid", [2]), series("c", "len", [12]), series("d", "wid", [4, 5]))).toEqual([4, 3]);
});

it("never pairs across outings", () => {
  expect(ratios(series("a", "len", [8]), series("b", "wid", [2], "V2"))).toEqual([]);
});

it("gives none where one of the series is left out: nobody knows which organs belong together", () => {
  expect(ratios(series("c", "len", [12]), series("b", "wid", [2]), series("d", "wid", [4]))).toEqual([]);
});

it("passes over a width of zero", () => {
  expect(ratios(series("a", "len", [8, 9]), series("b", "wid", [0, 3]))).toEqual([3]);
});
