/**
 * A series of readings as a person types or speaks it, "43 45 51.5 mm" or "4,5 5.1 cm", read into values of the character's
 * unit; and a guard that asks at once when a value stands far from the others or from what the table says, above all by
 * the factor of another unit. It asks; it never changes or drops a value.
 */
import { fail, ok, type Problem, type Result } from "../base/result.js";
import { convertLength, unitOf } from "./length-unit.js";
import { median } from "./quantile.js";

/** What the table says of the character, in the character's unit. */
export interface ExpectedRange {
  readonly low: number;
  readonly high: number;
}

/** One thing to ask before the series is kept. Values and middles are in the unit of the series. */
export type SeriesQuestion =
  /** "5.1 mm among 50s: centimetres?": the value times `factor` would fit. `indices`: which values. */
  | {
      readonly kind: "another-unit";
      readonly indices: readonly number[];
      readonly values: readonly number[];
      /** 10, 0.1, 25.4 or 1/25.4. */
      readonly factor: number;
      /** The unit the values would then have been in; null when the factor names none for this unit. */
      readonly perhapsUnit: string | null;
      readonly against: "series" | "table";
      /** The middle of the other values, or of the table's range. */
      readonly middle: number;
    }
  | { readonly kind: "far-from-series"; readonly index: number; readonly value: number; readonly middle: number }
  | {
      readonly kind: "outside-table";
      readonly indices: readonly number[];
      readonly values: readonly number[];
      readonly expected: ExpectedRange;
    }
  /** "43,45": one value with a decimal comma (as read), or two values? */
  | { readonly kind: "comma"; readonly index: number; readonly written: string };

export interface ReadingSeries {
  readonly values: readonly number[];
  readonly unit: string;
  readonly questions: readonly SeriesQuestion[];
}

const problem = (code: string, text: string, value: string): { readonly ok: false; readonly problem: Problem } =>
  fail({ code, where: "readings", value: value.slice(0, 80), text });

const factors = [10, 0.1, 25.4, 1 / 25.4] as const;

/** The unit in which the values would be `factor` times as large. */
const perhapsUnit = (unit: string, factor: number): string | null =>
  ["um", "mm", "cm", "dm", "m", "in"].find((other) => {
    const size = convertLength(1, other, unit);
    return size !== null && other !== unit && Math.abs(size - factor) < 1e-9;
  }) ?? null;

/** Room around the values seen: half as much below, half as much again above. A judgement, no source. */
const room = 1.5;
const inside = (value: number, low: number, high: number): boolean => value >= low / room && value <= high * room;

/**
 * The guard alone: questions about values of one unit. Needs three other values to speak of a series, five for an outlier that
 * no unit explains. There the modified z-score |0.6745 (x - median) / MAD| > 3.5 is used (Iglewicz & Hoaglin 1993, How to
 * detect and handle outliers, ASQC), and the value must also lie outside half to one and a half times the spread of the others.
 */
export const questionsOfSeries = (
  values: readonly number[],
  unit: string,
  expected: ExpectedRange | null = null,
): readonly SeriesQuestion[] => {
  const questions: SeriesQuestion[] = [];
  const asked = new Set<number>();
  // First the series as a whole against the table: two capsules of 5.1 and 4.8 have no others to stand out from.
  const outside = values.flatMap((value, i) => (expected !== null && !inside(value, expected.low, expected.high) ? [{ value, i }] : []));
  if (expected !== null && outside.length > 0) {
    for (const factor of factors) {
      const fitting = outside.filter(({ value, i }) => !asked.has(i) && inside(value * factor, expected.low, expected.high));
      if (fitting.length === 0) continue;
      fitting.forEach(({ i }) => asked.add(i));
      questions.push({
        kind: "another-unit",
        indices: fitting.map(({ i }) => i),
        values: fitting.map(({ value }) => value),
        factor,
        perhapsUnit: perhapsUnit(unit, factor),
        against: "table",
        middle: (expected.low + expected.high) / 2,
      });
    }
  }
  values.forEach((value, index) => {
    if (asked.has(index)) return;
    const others = values.filter((_, i) => i !== index);
    if (others.length < 3) return;
    const middle = median(others);
    const sorted = [...others].sort((a, b) => a - b);
    // The outermost of the others may itself be a slip: look at the middle of them.
    const trim = others.length >= 6 ? Math.floor(others.length / 6) : 0;
    const [low, high] = [sorted[trim] ?? middle, sorted[sorted.length - 1 - trim] ?? middle];
    if (inside(value, low, high)) return;
    const factor = factors.find((f) => inside(value * f, low, high) && high / room < low * room * 4);
    if (factor !== undefined) {
      questions.push({
        kind: "another-unit",
        indices: [index],
        values: [value],
        factor,
        perhapsUnit: perhapsUnit(unit, factor),
        against: "series",
        middle,
      });
      asked.add(index);
      return;
    }
    if (values.length < 6) return;
    const centre = median(values);
    const mad = median(values.map((v) => Math.abs(v - centre)));
    const z = mad === 0 ? Number.POSITIVE_INFINITY : (0.6745 * Math.abs(value - centre)) / mad;
    if (z > 3.5) {
      questions.push({ kind: "far-from-series", index, value, middle });
      asked.add(index);
    }
  });
  const rest = outside.filter(({ i }) => !asked.has(i));
  if (expected !== null && rest.length > 0) {
    questions.push({ kind: "outside-table", indices: rest.map(({ i }) => i), values: rest.map(({ value }) => value), expected });
  }
  return questions;
};

/** A decimal comma or point; "43,45,51" (two commas) is a list. */
const splitToken = (token: string): readonly string[] => ((token.match(/,/g) ?? []).length > 1 ? token.split(",") : [token]);

/**
 * Reads a typed series. Values stand apart by blanks, semicolons, slashes or a comma with a blank; decimal point or comma.
 * A unit holds for the values before it that have none; without any unit the character's is meant. The result is in the
 * character's unit. A text that is no number or unit, or a unit that cannot be converted, is refused with its place.
 *
 * @example
 * readingSeries("4,5 5.1 cm", { unit: "mm" }) // => { ok: true, value: { values: [45, 51], unit: "mm", questions: [] } }
 */
export const readingSeries = (
  text: string,
  { unit, expected = null }: { readonly unit: string; readonly expected?: ExpectedRange | null },
): Result<ReadingSeries, Problem> => {
  const tokens = text
    .normalize("NFKC")
    .replace(/[\u2212]/g, "-")
    .replace(/(\d)([a-z\u00B5\u03BC%"]+\.?)(?=[\s;/,]|$)/gi, "$1 $2")
    .split(/[\s;/]+|,(?=\s)/)
    .map((token) => token.replace(/,$/, ""))
    .filter((token) => token !== "")
    .flatMap(splitToken);
  const read: { value: number; unit: string | null; written: string }[] = [];
  for (const token of tokens) {
    if (/^-?(?:\d+(?:[.,]\d+)?|[.,]\d+)$/.test(token)) {
      read.push({ value: Number(token.replace(",", ".")), unit: null, written: token });
      continue;
    }
    const named = unitOf(token);
    if (named === null)
      return problem("not-a-number", `"${token}" is neither a number nor a unit. Write values with blanks between, then the unit.`, token);
    if (read.every((entry) => entry.unit !== null))
      return problem("unit-without-value", `The unit "${token}" has no value before it.`, token);
    for (const entry of read) entry.unit ??= named;
  }
  if (read.length === 0) return problem("empty", "There is no value here.", text);
  if (read.length > 2000) return problem("too-many", `These are ${read.length} values; one series holds 2000 at most.`, text);
  const lastUnit = read.findLast((entry) => entry.unit !== null)?.unit ?? unit;
  const values: number[] = [];
  for (const entry of read) {
    const value = convertLength(entry.value, entry.unit ?? lastUnit, unit);
    if (value === null)
      return problem(
        "other-unit",
        `"${entry.unit ?? lastUnit}" cannot be turned into ${unit === "" ? "a plain number" : unit}.`,
        entry.written,
      );
    values.push(value);
  }
  const commas = read.flatMap((entry, index): SeriesQuestion[] => {
    const [whole, part] = entry.written.split(",");
    const others = values.filter((_, i) => i !== index);
    if (whole === undefined || part === undefined || others.length === 0) return [];
    const middle = median(others);
    const near = (piece: string): boolean => piece.length > 0 && inside(Number(piece), middle / 2, middle * 2);
    return near(whole) && near(part) ? [{ kind: "comma", index, written: entry.written }] : [];
  });
  return ok({ values, unit, questions: [...commas, ...questionsOfSeries(values, unit, expected)] });
};
