/**
 * Chance from a seed: the same seed gives the same numbers on every machine, so that a drawn result can be drawn again.
 * Not for secrets.
 */
import { normalQuantile } from "./normal.js";

export interface RandomSource {
  /** The next 32 bits, a whole number 0 to 2^32 - 1. */
  readonly bits: () => number;
  /** A number in [0, 1) with 53 random bits. */
  readonly uniform: () => number;
  /** A standard normal deviate, by inversion: exactly one uniform number each. */
  readonly normal: () => number;
  /** A whole number 0 to n - 1, without bias. */
  readonly below: (n: number) => number;
}

/**
 * A seeded source of chance.
 * Algorithm: xoshiro128** 1.1 (Blackman & Vigna 2021, "Scrambled linear pseudorandom number generators", ACM Transactions
 * on Mathematical Software 47: 36), its 128 bits of state filled from the seed by four steps of the 32-bit splitmix
 * mixer with the constants of MurmurHash3 (Appleby 2011; constants from memory).
 * @param seed a whole number; taken modulo 2^32
 * @throws {RangeError} if the seed is not a finite whole number
 */
export const randomSource = (seed: number): RandomSource => {
  if (!Number.isInteger(seed)) throw new RangeError(`randomSource requires a whole number as seed: got ${seed}`);
  let mixer = seed >>> 0;
  const next = (): number => {
    mixer = (mixer + 0x9e3779b9) >>> 0;
    let z = mixer;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return (z ^ (z >>> 16)) >>> 0;
  };
  return randomSourceFromState([next(), next(), next(), next()]);
};

/**
 * The same generator from its raw state, for checks against published sequences.
 * @param state four whole numbers of 32 bits, not all zero
 * @throws {RangeError} if all four are zero
 */
export const randomSourceFromState = (state: readonly [number, number, number, number]): RandomSource => {
  let [a, b, c, d] = state.map((part) => part >>> 0) as [number, number, number, number];
  if ((a | b | c | d) === 0) throw new RangeError("randomSourceFromState requires a state that is not all zero");
  const turn = (x: number, by: number): number => ((x << by) | (x >>> (32 - by))) >>> 0;
  const bits = (): number => {
    const result = Math.imul(turn(Math.imul(b, 5) >>> 0, 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = turn(d, 11);
    return result;
  };
  const uniform = (): number => ((bits() >>> 5) * 67_108_864 + (bits() >>> 6)) / 9_007_199_254_740_992;
  return {
    bits,
    uniform,
    normal: () => normalQuantile(Math.max(uniform(), Number.MIN_VALUE)),
    below: (n) => {
      if (!Number.isInteger(n) || n < 1 || n > 4_294_967_296) throw new RangeError(`below requires a whole number 1 to 2^32: got ${n}`);
      const limit = 4_294_967_296 - (4_294_967_296 % n);
      let draw = bits();
      while (draw >= limit) draw = bits();
      return draw % n;
    },
  };
};
