/** Integrals of smooth functions by Gauss-Legendre rules laid side by side. */

/**
 * Nodes and weights of the n-point Gauss-Legendre rule on [-1, 1], by Newton's method on the Legendre polynomial from the
 * usual cosine start (Abramowitz & Stegun 1964, 25.4.29 and 22.7.10).
 * @param n number of points, a whole number >= 1
 * @throws {RangeError} if n is not a whole number >= 1
 */
export const gaussLegendre = (n: number): { readonly nodes: Float64Array; readonly weights: Float64Array } => {
  if (!Number.isInteger(n) || n < 1) throw new RangeError(`gaussLegendre requires a whole number of points >= 1: got ${n}`);
  const nodes = new Float64Array(n);
  const weights = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let step = 0; step < 100; step += 1) {
      let before = 0;
      let now = 1;
      for (let k = 1; k <= n; k += 1) [before, now] = [now, ((2 * k - 1) * x * now - (k - 1) * before) / k];
      slope = (n * (x * now - before)) / (x * x - 1);
      const move = now / slope;
      x -= move;
      if (Math.abs(move) < 1e-16) break;
    }
    nodes[i] = x;
    weights[i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
};

const rule16 = gaussLegendre(16);

/**
 * Integral of f over the panels between neighbouring breaks, 16 points each.
 * @param breaks ascending; equal neighbours are skipped
 */
export const integrate = (f: (x: number) => number, breaks: ArrayLike<number>): number => {
  let sum = 0;
  for (let i = 1; i < breaks.length; i += 1) {
    const a = breaks[i - 1] ?? 0;
    const half = ((breaks[i] ?? 0) - a) / 2;
    if (half <= 0) continue;
    let panel = 0;
    for (let k = 0; k < 16; k += 1) panel += (rule16.weights[k] ?? 0) * f(a + half * (1 + (rule16.nodes[k] ?? 0)));
    sum += panel * half;
  }
  return sum;
};
