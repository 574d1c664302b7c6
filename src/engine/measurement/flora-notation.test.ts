import { describe, expect, it } from "vitest";
import { decimalsOfError, sampleNotation, writeFloraRange } from "./flora-notation.js";
import { readFloraRange } from "./read-flora-range.js";

const capsules = [53, 56, 47, 50, 47, 55, 48, 51, 49, 53, 43, 56];

describe("writing", () => {
  it("writes four numbers, and leaves out what says nothing new", () => {
    expect(writeFloraRange({ min: 30, low: 40, high: 60, max: 70 }, { unit: "mm" })).toBe("(30–)40–60(–70) mm");
    expect(writeFloraRange({ min: 0.8, low: 0.8, high: 1, max: 1.1 }, { unit: "mm" })).toBe("0.8–1.0(–1.1) mm");
    expect(writeFloraRange({ min: 5.04, low: 5.01, high: 5.02, max: null }, { decimals: 1 })).toBe("5.0");
    expect(writeFloraRange({ min: null, low: -2, high: 3, max: null })).toBe("−2–3");
    expect(writeFloraRange({ min: null, low: 20, high: 30, max: null }, { unit: "um" })).toBe("20–30 µm");
  });

  it("writes our own data with quantiles from ten values on, else with the extremes", () => {
    expect(sampleNotation(capsules, { unit: "mm", error: 0.5 })).toMatchObject({ text: "(43–)47–56 mm", n: 12, basis: "quantiles" });
    expect(sampleNotation([5.2, 5.7, 5, 4.9, 4.7], { unit: "mm", error: 0.2 })).toMatchObject({
      text: "4.7–5.7 mm",
      n: 5,
      basis: "extremes",
    });
    expect(sampleNotation([7])).toMatchObject({ text: "7", n: 1 });
    expect(() => sampleNotation([])).toThrow(RangeError);
  });

  it("rounds to the measuring error and no finer", () => {
    expect([0.02, 0.05, 0.2, 0.5, 1, 3, 20].map(decimalsOfError)).toEqual([2, 2, 1, 1, 0, 0, 0]);
    expect(sampleNotation([5.243, 5.71], { unit: "mm", error: 0.2 }).text).toBe("5.2–5.7 mm");
  });
});

const range = (text: string): unknown => {
  const result = readFloraRange(text);
  if (!result.ok) return result.problem.code;
  const q = result.value;
  return q.kind === "range" ? [q.min, q.low, q.high, q.max, q.manner, q.unit] : q;
};

describe("reading", () => {
  it.each([
    ["3-5", [null, 3, 5, null, "as-printed", null]],
    ["(2-)3-5(-7)", [2, 3, 5, 7, "as-printed", null]],
    ["(30–)40–60(–70) mm", [30, 40, 60, 70, "as-printed", "mm"]],
    ["(0.5-)1.2-2", [0.5, 1.2, 2, null, "as-printed", null]],
    ["( 0,5 - ) 1,2 - 2 mm.", [0.5, 1.2, 2, null, "as-printed", "mm"]],
    ["to 5", [null, null, 5, null, "as-printed", null]],
    ["up to 30 cm", [null, null, 30, null, "as-printed", "cm"]],
    ["ca. 3", [null, 3, 3, null, "about", null]],
    ["c. 3 mm", [null, 3, 3, null, "about", "mm"]],
    [">12", [null, 12, null, null, "more-than", null]],
    ["< 5 mm", [null, null, 5, null, "less-than", "mm"]],
    ["at least 4", [null, 4, null, null, "as-printed", null]],
    ["4(-6) cm", [null, 4, 4, 6, "as-printed", "cm"]],
    ["8 mm-12 mm", [null, 8, 12, null, "as-printed", "mm"]],
    ["20-30 µm", [null, 20, 30, null, "as-printed", "um"]],
    ["8 mm - 1.2 cm", "mixed-units"],
    ["7-3", "reversed-range"],
    ["(8-)5-7", "reversed-range"],
    ["5-7(-6)", "reversed-range"],
    ["((2-)3-)4-5", "nested-brackets"],
    ["5 furlongs", "unknown-unit"],
    ["", "empty"],
    ["hairy", "unreadable"],
    ["3-5-7", "unreadable"],
    ["5--7", "unreadable"],
  ])("%s", (text, expected) => {
    expect(range(text)).toEqual(expected);
  });

  it("keeps separate values apart from ranges", () => {
    expect(range("5 or 10")).toEqual({ kind: "alternatives", usual: [5, 10], rarely: [], unit: null });
    expect(range("5(or 10)")).toEqual({ kind: "alternatives", usual: [5], rarely: [10], unit: null });
    expect(range("(3 or)4")).toEqual({ kind: "alternatives", usual: [4], rarely: [3], unit: null });
    expect(range("numerous")).toEqual({ kind: "numerous" });
  });

  it("reads length by width, the unit at the end holding for both", () => {
    expect(range("4-6(-8) x 2-3 mm")).toMatchObject({
      kind: "dimensions",
      length: { low: 4, high: 6, max: 8, unit: "mm" },
      width: { low: 2, high: 3, unit: "mm" },
    });
    expect(range("3–8×1–2 cm")).toMatchObject({ kind: "dimensions", length: { unit: "cm" }, width: { high: 2 } });
  });

  it("says what to do", () => {
    const result = readFloraRange("8 mm - 1.2 cm");
    expect(!result.ok && result.problem.text).toMatch(/one unit/);
  });
});
