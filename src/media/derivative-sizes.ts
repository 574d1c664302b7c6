/** Longest side of a small copy, pixels. */
export type DerivativePx = 320 | 2048;

/** Both sizes, the small one first. */
export const derivativeSizes: readonly DerivativePx[] = [320, 2048];
