import { describe, expect, it } from "vitest";
import type { SheetRow } from "../../../contract/index.js";
import { daysOf, sheetsIn, trayCounts, trayOf } from "./trays.js";

const sheet = (over: Partial<Record<keyof SheetRow, unknown>>): SheetRow =>
  ({ id: "x", taken: null, outingId: null, plantId: null, leftOut: false, ...over }) as SheetRow;
const sheets = [
  sheet({ taken: "2022-05-29T10:00:00", outingId: "V3", plantId: "P1" }),
  sheet({ taken: "2022-05-29T10:10:00", outingId: "V3" }),
  sheet({ taken: "2022-03-23T10:10:00", outingId: "V1", plantId: "P1", leftOut: true }),
  sheet({}),
];

describe("trays", () => {
  it("puts every sheet into exactly one tray", () => {
    expect(sheets.map(trayOf)).toEqual(["plant:P1", "not-sure", "left-out", "unsorted"]);
    const counts = trayCounts(sheets);
    expect(counts.get("all")).toBe(4);
    expect([...counts].filter(([t]) => t !== "all").reduce((n, [, c]) => n + c, 0)).toBe(4);
  });
  it("cuts a tray by day and lists the days in order", () => {
    expect(sheetsIn(sheets, { tray: "all", day: "2022-05-29" })).toHaveLength(2);
    expect(sheetsIn(sheets, { tray: "not-sure", day: "" })).toEqual([sheets[1]]);
    expect(daysOf(sheets)).toEqual([
      { day: "2022-03-23", count: 1 },
      { day: "2022-05-29", count: 2 },
    ]);
  });
});
