/**
 * The two-piece normal distribution: two half normals with one mode and different spreads to either side, on the plain or
 * on the logarithmic scale; it turns the printed numbers of a flora into chances. With equal spreads it is the normal (or
 * log-normal) distribution.
 * Source: John 1982, "The three-parameter two-piece normal family of distributions and its fitting", Communications in
 * Statistics - Theory and Methods 11: 879-885; history in Wallis 2014, Statistical Science 29: 106-112.
 */
import { logAddExp } from "../base/log-space.js";
import { logNormalCdf, logNormalDensity, logNormalInterval, normalQuantile } from "../base/normal.js";
import { integrate } from "../base/quadrature.js";

export interface TwoPieceNormal {
  readonly kind: "two-piece-normal";
  /** `log`: mode and spreads are those of the natural logarithm of the value, which must be positive. */
  readonly scale: "linear" | "log";
  readonly mode: number;
  /** Spread below and above the mode, both > 0. */
  readonly sdLow: number;
  readonly sdHigh: number;
}

/** log density at x. `extra` is added to both variances (error of the reading), on the plain scale. */
export const logDensityAt = (d: Omit<TwoPieceNormal, "kind">, x: number, extra = 0): number => {
  if (d.scale === "linear") return linearDensity(x, d.mode, Math.sqrt(d.sdLow ** 2 + extra), Math.sqrt(d.sdHigh ** 2 + extra));
  if (x <= 0) return -Infinity;
  const relative = extra / x / x;
  return linearDensity(Math.log(x), d.mode, Math.sqrt(d.sdLow ** 2 + relative), Math.sqrt(d.sdHigh ** 2 + relative)) - Math.log(x);
};

/** log chance of a value between `from` and `to`, from < to; `extra` as in {@link logDensityAt}. */
export const logChanceBetween = (d: Omit<TwoPieceNormal, "kind">, from: number, to: number, extra = 0): number => {
  if (d.scale === "linear") return linearInterval(from, to, d.mode, Math.sqrt(d.sdLow ** 2 + extra), Math.sqrt(d.sdHigh ** 2 + extra));
  if (to <= 0) return -Infinity;
  const middle = (Math.max(0, from) + to) / 2;
  const relative = extra / middle / middle;
  const low = from <= 0 ? -Infinity : Math.log(from);
  return linearInterval(low, Math.log(to), d.mode, Math.sqrt(d.sdLow ** 2 + relative), Math.sqrt(d.sdHigh ** 2 + relative));
};

/** The value below which the share q of the organs lies, 0 < q < 1. */
export const quantileOf = (d: Omit<TwoPieceNormal, "kind">, q: number): number => {
  const spread = d.sdLow + d.sdHigh;
  const y = d.mode + spread * unitQuantile(q, d.sdLow / spread);
  return d.scale === "log" ? Math.exp(y) : y;
};

/** A normal distribution as fitted to measured specimens. @throws {RangeError} if the spread is not positive */
export const fittedNormal = (mean: number, sd: number): TwoPieceNormal => {
  if (!(Number.isFinite(mean) && sd > 0 && Number.isFinite(sd))) {
    throw new RangeError(`fittedNormal requires a finite mean and a spread > 0: got ${mean} and ${sd}`);
  }
  return { kind: "two-piece-normal", scale: "linear", mode: mean, sdLow: sd, sdHigh: sd };
};

/** One printed number with the share of organs that the source's convention puts below it. */
export interface QuantilePoint {
  readonly share: number;
  readonly value: number;
}

/**
 * Log-normal through printed quantiles, by least squares of log value on normal quantile.
 * @param points at least two, values > 0
 * @returns mean and spread of the logarithm, and the sum of squared misfits (log units)
 */
export const fitLogNormal = (points: readonly QuantilePoint[]): { readonly mu: number; readonly sigma: number; readonly rss: number } => {
  const line = leastSquares(
    points.map((p) => normalQuantile(p.share)),
    points.map((p) => Math.log(p.value)),
  );
  return { mu: line.intercept, sigma: line.slope, rss: line.rss };
};

/**
 * Two-piece normal through printed quantiles, by least squares of value on quantile for the best share of mass below the
 * mode. Exact for two (symmetric) and, where the family can bend so far, three points; four points of one shape leave a
 * misfit, returned as `rss` (squared units). Points that fit symmetrically give a symmetric answer.
 * @param points at least two, ascending in share and value, not all values equal
 */
export const fitTwoPieceNormal = (
  points: readonly QuantilePoint[],
): { readonly mode: number; readonly sdLow: number; readonly sdHigh: number; readonly rss: number } => {
  const values = points.map((p) => p.value);
  const at = (below: number) =>
    leastSquares(
      points.map((p) => unitQuantile(p.share, below)),
      values,
    );
  let best = 0.5;
  if (points.length > 2) {
    const width = (values.at(-1) ?? 0) - (values[0] ?? 0);
    let least = at(best).rss;
    for (let step = 1; step < 50; step += 1) {
      const below = step / 50;
      const { rss } = at(below);
      if (rss < least - 1e-12 * width * width) [best, least] = [below, rss];
    }
    best = best === 0.5 && least <= 1e-12 * width * width ? best : goldenMinimum((below) => at(below).rss, best - 0.02, best + 0.02);
  }
  const { intercept, slope, rss } = at(best);
  return { mode: intercept, sdLow: slope * best, sdHigh: slope * (1 - best), rss };
};

/**
 * How many standard deviations wide the range of n normal values is on average (d2 of the control charts): what "10-14"
 * means when it is the smallest and largest of n plants.
 * Source: Tippett 1925, "On the extreme individuals and the range of samples", Biometrika 17: 364-387.
 * @param n number of plants, >= 2
 */
export const rangeWidthInSd = (n: number): number => {
  if (!(n >= 2)) throw new RangeError(`rangeWidthInSd requires at least two plants: got ${n}`);
  const breaks = Array.from({ length: 41 }, (_, i) => -10 + i / 2);
  return integrate((x) => -Math.expm1(n * logNormalCdf(-x)) - Math.exp(n * logNormalCdf(x)), breaks);
};

const linearDensity = (x: number, mode: number, sdLow: number, sdHigh: number): number =>
  Math.log(2 / (sdLow + sdHigh)) + logNormalDensity((x - mode) / (x < mode ? sdLow : sdHigh));

const linearInterval = (from: number, to: number, mode: number, sdLow: number, sdHigh: number): number => {
  const below = (2 * sdLow) / (sdLow + sdHigh);
  const low = from < mode ? Math.log(below) + logNormalInterval((from - mode) / sdLow, (Math.min(to, mode) - mode) / sdLow) : -Infinity;
  const high =
    to > mode ? Math.log(2 - below) + logNormalInterval((Math.max(from, mode) - mode) / sdHigh, (to - mode) / sdHigh) : -Infinity;
  return logAddExp(low, high);
};

/** Quantile of the family with mode 0, sdLow + sdHigh = 1 and sdLow = below, which is also the mass below the mode. */
const unitQuantile = (q: number, below: number): number =>
  q < below ? below * normalQuantile(q / (2 * below)) : -(1 - below) * normalQuantile((1 - q) / (2 * (1 - below)));

const leastSquares = (x: readonly number[], y: readonly number[]): { intercept: number; slope: number; rss: number } => {
  const n = x.length;
  const meanX = x.reduce((sum, value) => sum + value, 0) / n;
  const meanY = y.reduce((sum, value) => sum + value, 0) / n;
  let xx = 0;
  let xy = 0;
  for (let i = 0; i < n; i += 1) {
    xx += ((x[i] ?? 0) - meanX) ** 2;
    xy += ((x[i] ?? 0) - meanX) * ((y[i] ?? 0) - meanY);
  }
  const slope = xy / xx;
  const intercept = meanY - slope * meanX;
  let rss = 0;
  for (let i = 0; i < n; i += 1) rss += ((y[i] ?? 0) - intercept - slope * (x[i] ?? 0)) ** 2;
  return { intercept, slope, rss };
};

const goldenMinimum = (f: (x: number) => number, from: number, to: number): number => {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let a = Math.max(from, 0.01);
  let b = Math.min(to, 0.99);
  let c = b - ratio * (b - a);
  let d = a + ratio * (b - a);
  for (let step = 0; step < 60; step += 1) {
    if (f(c) < f(d)) b = d;
    else a = c;
    c = b - ratio * (b - a);
    d = a + ratio * (b - a);
  }
  return (a + b) / 2;
};
