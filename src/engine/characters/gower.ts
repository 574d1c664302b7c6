/**
 * Gower's distance between plants or taxa described by characters of several kinds, some of them missing. It needs no
 * probabilities; it serves to find look-alikes.
 */

/** One character over all rows; null = missing. */
export type GowerColumn =
  | { readonly kind: "numeric" | "ordinal"; readonly values: readonly (number | null)[]; readonly weight?: number }
  /** `asymmetric-binary`: 0 in both says nothing (both lack it for many reasons). Values 0 and 1. */
  | { readonly kind: "symmetric-binary" | "asymmetric-binary"; readonly values: readonly (number | null)[]; readonly weight?: number }
  | { readonly kind: "nominal"; readonly values: readonly (string | number | null)[]; readonly weight?: number }
  /** Several states at once: 1 - shared / all (Jaccard 1901). Two empty sets are alike. */
  | { readonly kind: "sets"; readonly values: readonly (readonly (string | number)[] | null)[]; readonly weight?: number };

/**
 * All distances, pair (i, j) with i < j at [i n - i (i + 1) / 2 + j - i - 1], each 0-1:
 * d = sum w delta d_k / sum w delta, delta = 0 where either is missing or both are 0 in an asymmetric binary character.
 * Numeric: |x - y| / range over all rows. Ordinal: by the rank of the levels that occur, equal steps apart (1, 2, 3, 5 are
 * four steps of one). Other kinds: 0 alike, 1 not.
 * Source: Gower 1971, "A general coefficient of similarity and some of its properties", Biometrics 27: 857-871; ordinal and
 * missing values as in Kaufman & Rousseeuw 1990, Finding Groups in Data, section 2.6.
 * @returns NaN for a pair with no character in common: the one place where NaN means "cannot be said"
 * @throws {RangeError} if columns differ in length, a weight is negative, or a value is not finite or not 0/1 where it must be
 */
export const gowerDistances = (columns: readonly GowerColumn[]): Float64Array => {
  const n = columns[0]?.values.length ?? 0;
  const size = (n * (n - 1)) / 2;
  const sum = new Float64Array(size);
  const weightSum = new Float64Array(size);
  columns.forEach((column, k) => {
    if (column.values.length !== n)
      throw new RangeError(`gowerDistances requires ${n} values in every column: got ${column.values.length} in column ${k}`);
    const weight = column.weight ?? 1;
    if (!(weight >= 0 && Number.isFinite(weight)))
      throw new RangeError(`gowerDistances requires weights >= 0: got ${weight} in column ${k}`);
    const distance = pairDistance(column, k);
    let at = 0;
    for (let i = 0; i < n; i += 1) {
      for (let j = i + 1; j < n; j += 1, at += 1) {
        const d = distance(i, j);
        if (d === null) continue;
        sum[at] = (sum[at] ?? 0) + weight * d;
        weightSum[at] = (weightSum[at] ?? 0) + weight;
      }
    }
  });
  return sum.map((total, at) => ((weightSum[at] ?? 0) > 0 ? total / (weightSum[at] ?? 1) : Number.NaN));
};

/** Position of pair (i, j), i and j different, in the list of {@link gowerDistances} over n rows. */
export const gowerPairIndex = (n: number, i: number, j: number): number => {
  const [low, high] = i < j ? [i, j] : [j, i];
  if (!(low >= 0 && high < n && low < high))
    throw new RangeError(`gowerPairIndex requires two different rows below ${n}: got ${i} and ${j}`);
  return low * n - (low * (low + 1)) / 2 + high - low - 1;
};

const pairDistance = (column: GowerColumn, k: number): ((i: number, j: number) => number | null) => {
  switch (column.kind) {
    case "numeric":
    case "ordinal": {
      const { values } = column;
      for (const value of values) {
        if (value !== null && !Number.isFinite(value))
          throw new RangeError(`gowerDistances requires finite values: got ${value} in column ${k}`);
      }
      const levels = [...new Set(values.filter((value) => value !== null))].sort((a, b) => a - b);
      const placed = column.kind === "ordinal" ? values.map((value) => (value === null ? null : levels.indexOf(value))) : values;
      const range = column.kind === "ordinal" ? levels.length - 1 : (levels.at(-1) ?? 0) - (levels[0] ?? 0);
      return (i, j) => {
        const a = placed[i] ?? null;
        const b = placed[j] ?? null;
        return a === null || b === null ? null : range > 0 ? Math.abs(a - b) / range : 0;
      };
    }
    case "symmetric-binary":
    case "asymmetric-binary": {
      const { values, kind } = column;
      for (const value of values) {
        if (value !== null && value !== 0 && value !== 1)
          throw new RangeError(`gowerDistances requires 0 or 1: got ${value} in column ${k}`);
      }
      return (i, j) => {
        const a = values[i] ?? null;
        const b = values[j] ?? null;
        return a === null || b === null || (kind === "asymmetric-binary" && a === 0 && b === 0) ? null : a === b ? 0 : 1;
      };
    }
    case "nominal":
      return (i, j) => {
        const a = column.values[i] ?? null;
        const b = column.values[j] ?? null;
        return a === null || b === null ? null : a === b ? 0 : 1;
      };
    case "sets":
      return (i, j) => {
        const a = column.values[i] ?? null;
        const b = column.values[j] ?? null;
        if (a === null || b === null) return null;
        const all = new Set([...a, ...b]).size;
        return all === 0 ? 0 : 1 - new Set(a.filter((state) => b.includes(state))).size / all;
      };
  }
};
