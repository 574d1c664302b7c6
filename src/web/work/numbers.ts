/** Numbers as people type them, with a decimal point or comma. */
import { say } from "../../words/index.js";

/** null = nothing was written; undefined = it is no number. */
export const numberIn = (text: string): number | null | undefined => {
  const tidy = text.trim().replace(",", ".").replace("\u2212", "-");
  if (tidy === "") return null;
  return /^-?\d+(\.\d+)?$/.test(tidy) ? Number(tidy) : undefined;
};

/** What is wrong with a number field; undefined = nothing. */
export const numberProblem = (
  text: string,
  limits: { readonly min?: number; readonly max?: number; readonly whole?: boolean } = {},
): string | undefined => {
  const value = numberIn(text);
  if (value === null) return undefined;
  if (value === undefined) return say("work.not-a-number", { text });
  if (limits.whole === true && !Number.isInteger(value)) return say("work.not-whole", { text });
  if (limits.min !== undefined && value < limits.min) return say("work.too-small", { min: limits.min });
  if (limits.max !== undefined && value > limits.max) return say("work.too-large", { max: limits.max });
  return undefined;
};
export const textOf = (value: number | null | undefined): string => (value === null || value === undefined ? "" : String(value));
