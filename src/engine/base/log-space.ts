/**
 * Sums and differences of numbers that are kept as natural logarithms, so that products of many small chances neither
 * vanish nor overflow. `-Infinity` stands for zero and is a legal value everywhere here; NaN is refused at the door by callers.
 */

/**
 * log(exp(a) + exp(b)) without overflow.
 * @example
 * ```ts
 * logAddExp(-1000, -1000); // => -999.3068528194401
 * ```
 */
export const logAddExp = (a: number, b: number): number => {
  const high = Math.max(a, b);
  if (high === -Infinity) return -Infinity;
  return high + Math.log1p(Math.exp(Math.min(a, b) - high));
};

/**
 * log of the sum of exp(x). An empty list gives -Infinity, the logarithm of nothing.
 * The largest term is taken out first, so at least one term is exp(0) = 1.
 */
export const logSumExp = (x: ArrayLike<number>): number => {
  let high = -Infinity;
  for (let i = 0; i < x.length; i += 1) high = Math.max(high, x[i] ?? -Infinity);
  if (high === -Infinity) return -Infinity;
  let sum = 0;
  for (let i = 0; i < x.length; i += 1) sum += Math.exp((x[i] ?? -Infinity) - high);
  return high + Math.log(sum);
};

/**
 * log(1 - exp(x)) for x <= 0, accurate at both ends.
 * Source: Mächler 2012, "Accurately computing log(1 - exp(-|a|))", note to the R package Rmpfr, equation 7.
 * @throws {RangeError} if x is positive
 */
export const log1mExp = (x: number): number => {
  if (!(x <= 0)) throw new RangeError(`log1mExp requires x <= 0: got ${x}`);
  return x > -Math.LN2 ? Math.log(-Math.expm1(x)) : Math.log1p(-Math.exp(x));
};
