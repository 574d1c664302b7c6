/** Random numbers from a seed given as text: the same text gives the same numbers on every machine. */

/** A stream of random numbers. */
export interface SeededRandom {
  /** Evenly between `from` and `to`. */
  readonly between: (from: number, to: number) => number;
  /** About a bell: mean 0, standard deviation 1, never beyond 3 (sum of twelve even numbers, less six, cut). */
  readonly bell: () => number;
}

/**
 * A stream for a seed. The text is folded to 32 bits by FNV-1a (Fowler, Noll, Vo; constants as published by them) and
 * continued by a 32-bit counter generator with multiply-xorshift mixing (constants from memory).
 */
export function seededRandom(seed: string): SeededRandom {
  let state = 0x811c9dc5;
  for (let i = 0; i < seed.length; i += 1) state = Math.imul(state ^ seed.charCodeAt(i), 0x01000193);
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    between: (from, to) => from + (to - from) * next(),
    bell: () => {
      let sum = -6;
      for (let i = 0; i < 12; i += 1) sum += next();
      return Math.max(-3, Math.min(3, sum));
    },
  };
}
