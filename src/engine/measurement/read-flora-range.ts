/**
 * The measurement notation of floras, read: `(2-)3-5(-7)`, `to 5`, `5 or 10`, `4-6(-8) x 2-3 mm`. A flora's outer numbers are
 * kept as such and are never taken for quantiles; what is not written is null and never zero. Reversed ranges, nested
 * brackets, unknown and mixed units are refused with the reason.
 */
import { fail, ok, type Problem, type Result } from "../base/result.js";
import { unitOf } from "./length-unit.js";

/** One range as written. `low` is null after "to 5" and "up to 5", `high` is null after ">12" and "at least 12". */
export interface FloraRange {
  readonly kind: "range";
  readonly min: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly max: number | null;
  /** "ca. 3": about; ">12" and "<5" leave their own number out; else exact as printed. */
  readonly manner: "as-printed" | "about" | "more-than" | "less-than";
  readonly unit: string | null;
}
/** Separate values joined by "or"; those in brackets are rare. */
export interface FloraAlternatives {
  readonly kind: "alternatives";
  readonly usual: readonly number[];
  readonly rarely: readonly number[];
  readonly unit: string | null;
}
export type FloraQuantity =
  | FloraRange
  | FloraAlternatives
  /** Length first, then width. A unit written once, at the end, holds for both. */
  | { readonly kind: "dimensions"; readonly length: FloraRange; readonly width: FloraRange }
  /** "numerous", "many": more than anyone counts. */
  | { readonly kind: "numerous" };

const number = String.raw`\d+(?:[.,]\d+)?`;
const rangePattern = new RegExp(`^(?:\\((${number})-\\))?(${number})(?:-(${number}))?(?:\\(-(${number})\\))?$`);
const valueOf = (text: string | undefined): number | null => (text === undefined ? null : Number(text.replace(",", ".")));

const problem = (code: string, text: string, value: string): { readonly ok: false; readonly problem: Problem } =>
  fail({ code, where: "measurement", value: value.slice(0, 80), text });

/** Dashes become "-", the sign of multiplication "x", spaces inside brackets and around dashes go. */
const plain = (text: string): string =>
  text
    .normalize("NFKC")
    .replace(/[\u2010-\u2015\u2212]/g, "-")
    .replace(/\u00D7/g, "x")
    .replace(/\s+/g, " ")
    .replace(/\(\s+/g, "(")
    .replace(/\s+\)/g, ")")
    .replace(/\s*-\s*/g, "-")
    .replace(/(\d)\s*\(-/g, "$1(-")
    .replace(/-\)\s*(\d)/g, "-)$1")
    .trim();

/** Parts a trailing unit from the numbers; `unit` undefined = the word is no unit. */
const splitUnit = (text: string): { readonly numbers: string; readonly unit: string | null } | { readonly unknown: string } => {
  const match = /^(.*?[\d)])\s*([a-z\u00B5\u03BC%"\u00B0][a-z0-9\u00B5\u03BC]*\.?)?$/i.exec(text);
  if (match === null) return { numbers: text, unit: null };
  const word = match[2];
  if (word === undefined) return { numbers: match[1] ?? "", unit: null };
  const unit = unitOf(word);
  return unit === null ? { unknown: word } : { numbers: match[1] ?? "", unit };
};

const depthAbove = (text: string, limit: number): boolean => {
  let depth = 0;
  for (const mark of text) {
    if (mark === "(") depth += 1;
    if (mark === ")") depth -= 1;
    if (depth > limit) return true;
  }
  return false;
};

const manners: readonly (readonly [RegExp, "about" | "up-to" | "at-least" | "more-than" | "less-than"])[] = [
  [/^(?:ca?\.?|circa|about|c\.)\s*(?=\d)/i, "about"],
  [/^(?:up to|to|max\.?|at most|<=|\u2264)\s*(?=\d)/i, "up-to"],
  [/^(?:at least|from|min\.?|>=|\u2265)\s*(?=\d)/i, "at-least"],
  [/^(?:more than|over|>)\s*(?=\d)/i, "more-than"],
  [/^(?:less than|under|below|<)\s*(?=\d)/i, "less-than"],
];

const readRange = (written: string): Result<FloraRange, Problem> => {
  // "8 mm-1.2 cm": two units inside one range.
  const inner = /\d\s*([a-z\u00B5\u03BC]+)\.?-\(?\d/i.exec(written)?.[1];
  const split = splitUnit(written);
  if ("unknown" in split) return problem("unknown-unit", `"${split.unknown}" is no unit we know: write mm, cm, m, \u00B5m or %.`, written);
  if (inner !== undefined) {
    const first = unitOf(inner);
    if (first === null) return problem("unreadable", `"${written}" cannot be read as a measurement.`, written);
    if (first !== split.unit) {
      return problem("mixed-units", `"${written}" has two units in one range: write both numbers in one unit.`, written);
    }
    return readRange(written.replace(new RegExp(`(\\d)\\s*${inner}\\.?-`, "i"), "$1-"));
  }
  const found = manners.find(([pattern]) => pattern.test(split.numbers));
  const numbers = found === undefined ? split.numbers : split.numbers.replace(found[0], "");
  if (depthAbove(numbers, 1)) {
    return problem("nested-brackets", `"${written}" has brackets inside brackets: write (min-)low-high(-max).`, written);
  }
  const match = rangePattern.exec(numbers);
  if (match === null)
    return problem("unreadable", `"${written}" cannot be read as a measurement: write it like (30-)40-60(-70) mm.`, written);
  const [min, low, second, max] = [valueOf(match[1]), valueOf(match[2]), valueOf(match[3]), valueOf(match[4])];
  const high = second ?? low;
  const given = [min, low, high, max].filter((value) => value !== null);
  if (given.some((value, i) => i > 0 && value < (given[i - 1] ?? value))) {
    return problem("reversed-range", `"${written}" goes down: the numbers must rise from left to right.`, written);
  }
  const { unit } = split;
  const way = found?.[1];
  if (way === undefined || way === "about") {
    return ok({ kind: "range", min, low, high, max, manner: way === "about" ? "about" : "as-printed", unit });
  }
  const bound = { kind: "range" as const, min, max, unit };
  if (way === "up-to") {
    // "to 5-7": the usual upper end itself varies; only its larger number bounds.
    return ok({ ...bound, low: null, high, manner: "as-printed" });
  }
  if (way === "less-than") return ok({ ...bound, low: null, high, manner: "less-than" });
  return ok({ ...bound, low, high: null, manner: way === "more-than" ? "more-than" : "as-printed" });
};

/** "5 or 10", "5(or 10)", "(3 or)4": null when the text has no "or". */
const readAlternatives = (written: string): Result<FloraAlternatives, Problem> | null => {
  if (!/\bor\b/i.test(written)) return null;
  const split = splitUnit(written);
  if ("unknown" in split) return problem("unknown-unit", `"${split.unknown}" is no unit we know.`, written);
  const match = new RegExp(
    `^(?:\\((${number}(?: or ${number})*) or ?\\) ?)?(${number}(?:(?:,| or) ${number})*)(?: ?\\(or (${number}(?: or ${number})*)\\))?$`,
    "i",
  ).exec(split.numbers);
  if (match === null) return problem("unreadable", `"${written}" cannot be read as separate values: write it like 5 or 10.`, written);
  const list = (text: string | undefined): number[] =>
    text === undefined ? [] : text.split(/,? or |, /i).map((part) => Number(part.replace(",", ".")));
  return ok({ kind: "alternatives", usual: list(match[2]), rarely: [...list(match[1]), ...list(match[3])], unit: split.unit });
};

/**
 * Reads one measurement of flora prose. Hyphen, en dash and minus mean the same; `x` and × mean "by"; decimal point or comma.
 *
 * @example
 * readFloraRange("(30-)40-60(-70) mm") // => { ok: true, value: { kind: "range", min: 30, low: 40, high: 60, max: 70, ... } }
 * readFloraRange("8 mm - 1.2 cm")      // => { ok: false, problem: { code: "mixed-units", ... } }
 */
export const readFloraRange = (text: string): Result<FloraQuantity, Problem> => {
  const written = plain(text);
  if (written === "") return problem("empty", "There is no measurement here.", text);
  if (written.length > 200) return problem("too-long", "This is too long for one measurement.", text);
  if (/^(numerous|many|\u221E)$/i.test(written)) return ok({ kind: "numerous" });
  const alternatives = readAlternatives(written);
  if (alternatives !== null) return alternatives;
  const sides = written.split(/ x (?=[\d(<>])|(?<=[\d)])x(?=[\d(])/i);
  if (sides.length > 2) return problem("unreadable", `"${written}" has more than length x width.`, text);
  const [first, second] = sides;
  if (first === undefined || second === undefined) return readRange(written);
  const [length, width] = [readRange(first), readRange(second)];
  if (!length.ok) return length;
  if (!width.ok) return width;
  const unit = length.value.unit ?? width.value.unit;
  return ok({
    kind: "dimensions",
    length: { ...length.value, unit },
    width: { ...width.value, unit: width.value.unit ?? unit },
  });
};
