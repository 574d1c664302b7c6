/**
 * The normal distribution, accurate far out in the tails, where a plant that does not belong to a taxon lies. All
 * functions are for the standard normal; callers standardise.
 */
import { log1mExp } from "./log-space.js";

const LOG_SQRT_2PI = 0.918938533204672741780329736406;
const ONE_OVER_SQRT_2PI = 0.398942280401432677939946059934;

/** log of the standard normal density at z. */
export const logNormalDensity = (z: number): number => -LOG_SQRT_2PI - 0.5 * z * z;

/** The standard normal density at z. */
export const normalDensity = (z: number): number => ONE_OVER_SQRT_2PI * Math.exp(-0.5 * z * z);

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
  const over =
    (((0.065682337918207449113 * s + 2.2352520354606839287) * s + 161.02823106855587881) * s + 1067.6894854603709582) * s +
    18154.981253343561249;
  const under = (((s + 47.20258190468824187) * s + 976.09855173777669322) * s + 10260.932208618978205) * s + 45507.789335026729956;
  return (z * over) / under;
};

/** log of the chance beyond z, z > 0.6744. */
const logUpperTail = (z: number): number => {
  if (z <= 5.656854249492380195) {
    return Math.log(polynomial(tailMiddle.over, z) / polynomial(tailMiddle.under, z)) - 0.5 * z * z;
  }
  if (z === Infinity) return -Infinity;
  const s = 1 / (z * z);
  const ratio = (s * polynomial(tailFar.over, s)) / polynomial(tailFar.under, s);
  return Math.log((ONE_OVER_SQRT_2PI - ratio) / z) - 0.5 * z * z;
};

const tailMiddle = {
  over: [
    9842.7148383839780218, 11602.651437647350124, 6848.1904505362823326, 2494.5375852903726711, 597.27027639480026226,
    93.506656132177855979, 8.8831497943883759412, 0.39894151208813466764, 1.0765576773720192317e-8,
  ],
  under: [
    19685.429676859990727, 38912.003286093271411, 34900.952721145977266, 18615.571640885098091, 6485.558298266760755, 1519.377599407554805,
    235.38790178262499861, 22.266688044328115691, 1,
  ],
};

const tailFar = {
  over: [
    2.9112874951168792e-5, 0.001421619193227893466, 0.022235277870649807, 0.1274011611602473639, 0.21589853405795699,
    0.02307344176494017303,
  ],
  under: [7.29751555083966205e-5, 0.00378239633202758244, 0.0659881378689285515, 0.468238212480865118, 1.28426009614491121, 1],
};

const quantileMiddle = {
  over: [
    3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125, 45921.953931549871457, 67265.770927008700853,
    33430.575583588128105, 2509.0809287301226727,
  ],
  under: [
    1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867, 39307.89580009271061,
    28729.085735721942674, 5226.495278852854561,
  ],
};

const quantileNear = {
  over: [
    1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504, 1.27045825245236838258,
    0.24178072517745061177, 0.0227238449892691845833, 7.7454501427834140764e-4,
  ],
  under: [
    1, 2.05319162663775882187, 1.6763848301838038494, 0.68976733498510000455, 0.14810397642748007459, 0.0151986665636164571966,
    5.475938084995344946e-4, 1.05075007164441684324e-9,
  ],
};

const quantileFar = {
  over: [
    6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 0.29656057182850489123, 0.026532189526576123093,
    0.0012426609473880784386, 2.71155556874348757815e-5, 2.01033439929228813265e-7,
  ],
  under: [
    1, 0.59983220655588793769, 0.13692988092273580531, 0.0148753612908506148525, 7.868691311456132591e-4, 1.8463183175100546818e-5,
    1.4215117583164458887e-7, 2.04426310338993978564e-15,
  ],
};
