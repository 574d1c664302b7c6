/**
 * The normal distribution, accurate far out in the tails, where a plant that does not belong to a taxon lies. All
 * functions are for the standard normal; callers standardise.
 */
import { log1mExp } from "./log-space.js";

const LOG_SQRT_2PI = 0.9189385332046728;
const ONE_OVER_SQRT_2PI = 0.3989422804014327;

/** log of the standard normal density at z. */
export const logNormalDensity = (z: number): number => -LOG_SQRT_2PI - 0.5 * z * z;

/**
 * Chance that a standard normal deviate is at most z, relative error below 1e-13 down to z = -37.5.
 * Source: Cody 1969, "Rational Chebyshev approximations for the error function", Mathematics of Computation 23: 631-637,
 * arranged for the normal integral as in Cody 1993 (Algorithm 715), ACM Transactions on Mathematical Software 19: 22-32.
 * @example
 * ```ts
 * normalCdf(0); // => 0.5
 * ```
 */
export const normalCdf = (z: number): number => {
  if (Math.abs(z) <= 0.67448975) return 0.5 + central(z);
  const tail = Math.exp(logUpperTail(Math.abs(z)));
  return z < 0 ? tail : 1 - tail;
};

/** log of {@link normalCdf}; finite for every finite z whose square does not overflow. */
export const logNormalCdf = (z: number): number => {
  if (Math.abs(z) <= 0.67448975) return Math.log(0.5 + central(z));
  return z < 0 ? logUpperTail(-z) : Math.log1p(-Math.exp(logUpperTail(z)));
};

/**
 * log of the chance that a standard normal deviate lies between a and b, a < b, without loss of digits when both lie in
 * the same tail or close together. Narrow intervals use the density in the middle with its second-order term, whose
 * next term is below 1e-15 there; wide ones a difference of log tails (Mächler 2012).
 * @throws {RangeError} if a >= b or either is NaN
 */
export const logNormalInterval = (a: number, b: number): number => {
  if (!(a < b)) throw new RangeError(`logNormalInterval requires a < b: got ${a} and ${b}`);
  if (a > 0) return logNormalInterval(-b, -a);
  const width = b - a;
  const middle = a + width / 2;
  if (width * Math.max(1, Math.abs(middle)) < 1e-3) {
    return logNormalDensity(middle) + Math.log(width) + Math.log1p(((middle * middle - 1) * width * width) / 24);
  }
  if (b <= 0) {
    const high = logNormalCdf(b);
    const low = logNormalCdf(a);
    return high === -Infinity ? -Infinity : high + log1mExp(low - high);
  }
  return Math.log1p(-normalCdf(a) - normalCdf(-b));
};

/**
 * The z below which the share p of a standard normal population lies; -Infinity at 0, Infinity at 1.
 * Source: Wichura 1988, "Algorithm AS 241: the percentage points of the normal distribution", Applied Statistics 37:
 * 477-484, routine PPND16 (about 16 digits).
 * @throws {RangeError} if p is not between 0 and 1
 */
export const normalQuantile = (p: number): number => {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`normalQuantile requires a share 0 to 1: got ${p}`);
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (q * polynomial(quantileMiddle.over, r)) / polynomial(quantileMiddle.under, r);
  }
  const side = q < 0 ? p : 1 - p;
  if (side <= 0) return q < 0 ? -Infinity : Infinity;
  const r = Math.sqrt(-Math.log(side));
  const { over, under } = r <= 5 ? quantileNear : quantileFar;
  const shifted = r - (r <= 5 ? 1.6 : 5);
  const z = polynomial(over, shifted) / polynomial(under, shifted);
  return q < 0 ? -z : z;
};

/** Coefficients from the constant upwards. */
const polynomial = (coefficients: readonly number[], x: number): number => {
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 0; i -= 1) sum = sum * x + (coefficients[i] ?? 0);
  return sum;
};

/** Integral from 0 to z, |z| <= 0.6745. */
const central = (z: number): number => {
  const s = z * z;
  const over = (((0.06568233791820745 * s + 2.2352520354606837) * s + 161.02823106855587) * s + 1067.6894854603709) * s + 18154.98125334356;
  const under = (((s + 47.202581904688245) * s + 976.0985517377767) * s + 10260.932208618979) * s + 45507.78933502673;
  return (z * over) / under;
};

/** log of the chance beyond z, z > 0.6744. */
const logUpperTail = (z: number): number => {
  if (z <= 5.656854249492381) {
    return Math.log(polynomial(tailMiddle.over, z) / polynomial(tailMiddle.under, z)) - 0.5 * z * z;
  }
  if (z === Infinity) return -Infinity;
  const s = 1 / (z * z);
  const ratio = (s * polynomial(tailFar.over, s)) / polynomial(tailFar.under, s);
  return Math.log((ONE_OVER_SQRT_2PI - ratio) / z) - 0.5 * z * z;
};

const tailMiddle = {
  over: [
    9842.714838383978, 11602.65143764735, 6848.190450536283, 2494.5375852903726, 597.2702763948002, 93.50665613217785, 8.883149794388377,
    0.39894151208813466, 1.0765576773720192e-8,
  ],
  under: [
    19685.429676859992, 38912.00328609327, 34900.95272114598, 18615.571640885097, 6485.558298266761, 1519.3775994075547, 235.387901782625,
    22.266688044328117, 1,
  ],
};

const tailFar = {
  over: [
    0.000029112874951168793, 0.0014216191932278934, 0.022235277870649807, 0.12740116116024736, 0.215898534057957, 0.023073441764940174,
  ],
  under: [0.00007297515550839662, 0.0037823963320275824, 0.06598813786892856, 0.4682382124808651, 1.284260096144911, 1],
};

const quantileMiddle = {
  over: [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987, 67265.7709270087, 33430.57558358813,
    2509.0809287301227,
  ],
  under: [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271, 28729.085735721943,
    5226.495278852854,
  ],
};

const quantileNear = {
  over: [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684, 0.2417807251774506,
    0.022723844989269184, 0.0007745450142783414,
  ],
  under: [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457, 0.0005475938084995345,
    1.0507500716444169e-9,
  ],
};

const quantileFar = {
  over: [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124, 0.0012426609473880784,
    0.000027115555687434876, 2.0103343992922881e-7,
  ],
  under: [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133, 0.000018463183175100548, 1.421511758316446e-7,
    2.0442631033899397e-15,
  ],
};
