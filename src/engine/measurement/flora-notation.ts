/**
 * The measurement notation of floras, written: `(30–)40–60(–70) mm`. The usual values stand between, the exceptional
 * ones in brackets; an en dash for a range; a bracket that says nothing new is left out. For our own data the usual
 * values are the 10 % and 90 % quantiles (type 7) from {@link quantileSampleSize} values on; below that the notation is
 * smallest-largest, since quantiles of a few values say nothing.
 *
 * Source of the notation: contributors' guides of printed floras (Flora of China; Flora of Nepal). The choice of the
 * 10 % and 90 % quantiles and of the limit ten is ours; printed floras do not say what theirs are.
 */
import { quantile } from "./quantile.js";

/** From this many values on, our own data are written with quantiles and brackets. */
export const quantileSampleSize = 10;

/** The four numbers of a range in notation; an outer number that is missing is null. */
export interface FloraNumbers {
  readonly min: number | null;
  readonly low: number;
  readonly high: number;
  readonly max: number | null;
}

/** Decimals that a measuring error supports: the place of its first digit (0.2 -> 1, 0.05 -> 2, 3 -> 0). At most 4. */
export const decimalsOfError = (error: number): number => {
  if (!(error > 0) || !Number.isFinite(error)) throw new RangeError(`decimalsOfError: an error must be above 0, not ${error}`);
  return Math.min(4, Math.max(0, -Math.floor(Math.log10(error) + 1e-12)));
};

/** The most decimals any of the values is written with, at most 4. */
export const decimalsOfValues = (values: readonly number[]): number =>
  values.reduce((most, value) => {
    const written = Number(value.toFixed(4)).toString();
    const point = written.indexOf(".");
    return Math.max(most, point < 0 ? 0 : written.length - point - 1);
  }, 0);

const minus = "\u2212";
const dash = "\u2013";

/** A number as it is printed: rounded half away from zero, a true minus sign, no negative zero. */
const printed = (value: number, decimals: number): string => {
  const size = Math.abs(value);
  // Shifting by the exponent rounds 0.25 and 1.005 as they are written, which `toFixed` does not.
  const rounded = Number(`${Math.round(Number(`${size}e${decimals}`))}e-${decimals}`);
  const text = (Number.isFinite(rounded) ? rounded : size).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? minus + text : text;
};

/**
 * Writes `(min–)low–high(–max) unit`. A bracket equal to its neighbour after rounding is left out, and so is the dash
 * where low and high are equal. `decimals` 0-4; missing: as many as the numbers themselves have.
 *
 * @example
 * writeFloraRange({ min: 30, low: 40, high: 60, max: 70 }, { unit: "mm" }) // => "(30–)40–60(–70) mm"
 */
export const writeFloraRange = (
  numbers: FloraNumbers,
  { unit = "", decimals }: { readonly unit?: string; readonly decimals?: number } = {},
): string => {
  const { min, low, high, max } = numbers;
  const places = decimals ?? decimalsOfValues([low, high, ...(min === null ? [] : [min]), ...(max === null ? [] : [max])]);
  const [lowText, highText] = [printed(low, places), printed(high, places)];
  const minText = min === null ? lowText : printed(min, places);
  const maxText = max === null ? highText : printed(max, places);
  const before = minText === lowText ? "" : `(${minText}${dash})`;
  const after = maxText === highText ? "" : `(${dash}${maxText})`;
  const middle = lowText === highText ? lowText : `${lowText}${dash}${highText}`;
  const symbol = unit === "um" ? "\u00B5m" : unit;
  return `${before}${middle}${after}${symbol === "" ? "" : ` ${symbol}`}`;
};

/** A sample in notation, with how many values stand behind it. */
export interface SampleNotation {
  /** `(43–)46–56 mm`; without n, which is said in words of the reader's language. */
  readonly text: string;
  readonly numbers: FloraNumbers;
  readonly n: number;
  /** Whether the usual values are 10 % and 90 % quantiles (n >= 10) or smallest and largest. */
  readonly basis: "quantiles" | "extremes";
}

/**
 * Writes measured values in flora notation. `error` is the half-width of the measuring error in the same unit and rules the
 * decimals; without it the values' own decimals do. @throws {RangeError} when there is no value.
 */
export const sampleNotation = (
  values: readonly number[],
  { unit = "", error = null }: { readonly unit?: string; readonly error?: number | null } = {},
): SampleNotation => {
  if (values.length === 0) throw new RangeError("sampleNotation: no values");
  const [min, max] = [quantile(values, 0), quantile(values, 1)];
  const own = decimalsOfValues(values);
  const decimals = error === null ? own : Math.min(own, decimalsOfError(error));
  const enough = values.length >= quantileSampleSize;
  const numbers: FloraNumbers = enough
    ? { min, low: quantile(values, 0.1), high: quantile(values, 0.9), max }
    : { min: null, low: min, high: max, max: null };
  return { text: writeFloraRange(numbers, { unit, decimals }), numbers, n: values.length, basis: enough ? "quantiles" : "extremes" };
};
