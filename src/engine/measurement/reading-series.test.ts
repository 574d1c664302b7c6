import { describe, expect, it } from "vitest";
import { questionsOfSeries, readingSeries } from "./reading-series.js";

const read = (text: string, unit = "mm", expected: { low: number; high: number } | null = null) => {
  const result = readingSeries(text, { unit, expected });
  return result.ok ? result.value : result.problem.code;
};

describe("a typed series", () => {
  it.each([
    ["43 45 51.5 mm", [43, 45, 51.5]],
    ["4,5 5.1 cm", [45, 51]],
    ["43; 45 / 51", [43, 45, 51]],
    ["43, 45, 51", [43, 45, 51]],
    ["43,45,51", [43, 45, 51]],
    ["4.5cm 48mm", [45, 48]],
    ["4.5 cm 48 mm 51", [45, 48, 51]],
    ["0.12 in", [3.048]],
    ["800 µm", [0.8]],
    [".8 ,9", [0.8, 0.9]],
  ])("%s", (text, values) => {
    expect(read(text)).toMatchObject({ values, unit: "mm" });
  });

  it.each([
    ["", "empty"],
    ["mm", "unit-without-value"],
    ["43 long", "not-a-number"],
    ["43 %", "other-unit"],
    ["4.5.6", "not-a-number"],
    ["1e5", "not-a-number"],
  ])("refuses %s", (text, code) => {
    expect(read(text)).toBe(code);
  });

  it("asks whether a comma parts two values", () => {
    expect(read("43,45 47 48 50")).toMatchObject({ values: [43.45, 47, 48, 50], questions: [{ kind: "comma", index: 0 }] });
    expect(read("43,5 47 48 50")).toMatchObject({ questions: [] });
  });
});

describe("the guard", () => {
  it("asks for centimetres when one value is a tenth of the others", () => {
    expect(read("53 56 5.1 50 47")).toMatchObject({
      questions: [{ kind: "another-unit", indices: [2], values: [5.1], factor: 10, perhapsUnit: "cm", against: "series" }],
    });
  });

  it("asks for the whole series when the table knows better", () => {
    expect(read("5.1 4.8", "mm", { low: 30, high: 70 })).toMatchObject({
      questions: [{ kind: "another-unit", indices: [0, 1], factor: 10, perhapsUnit: "cm", against: "table" }],
    });
  });

  it("asks for inches", () => {
    expect(read("2.1 50 52 55 49")).toMatchObject({ questions: [{ kind: "another-unit", factor: 25.4, perhapsUnit: "in" }] });
  });

  it("asks for millimetres where centimetres are wanted", () => {
    expect(read("49 48 570 63 50", "cm")).toMatchObject({ questions: [{ indices: [2], factor: 0.1, perhapsUnit: "mm" }] });
  });

  it("asks about a value no unit explains", () => {
    expect(questionsOfSeries([50, 51, 49, 52, 50, 98], "mm")).toMatchObject([{ kind: "far-from-series", index: 5, value: 98 }]);
    expect(questionsOfSeries([80, 82], "mm", { low: 30, high: 50 })).toMatchObject([{ kind: "outside-table", indices: [0, 1] }]);
  });

  it("keeps quiet about honest series", () => {
    for (const series of [
      [54, 41, 52, 50, 46, 52, 57, 46],
      [12.3, 9.9, 11.7, 11.7, 10.2, 12.7, 14.7, 11.2],
      [0.98, 0.89, 0.8, 1.01, 1.01, 0.91, 0.97, 0.95, 1, 0.84],
      [93, 90, 95],
      [14, 8, 17, 11],
      [5, 5, 5, 5, 5, 5, 6],
    ]) {
      expect(questionsOfSeries(series, "mm")).toEqual([]);
    }
    expect(questionsOfSeries([53, 56, 47, 43], "mm", { low: 30, high: 70 })).toEqual([]);
  });
});
