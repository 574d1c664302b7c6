/** A single answer that may fail in the ordinary course of work: never thrown, always looked at. */
export type Result<T, P> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: P };

/** The answer is there. */
export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });

/** The answer could not be given, and why. */
export const fail = <P>(problem: P): { readonly ok: false; readonly problem: P } => ({ ok: false, problem });

/**
 * One thing wrong in something read from outside: where, which value, what to do. `code` is stable and tested; `text`
 * is for people and may change.
 */
export interface Problem {
  readonly code: string;
  /** Where: "row 17, column capsule_len" or a field path. */
  readonly where: string;
  /** The value as it stood, cut to 80 characters. */
  readonly value?: string;
  readonly text: string;
}
