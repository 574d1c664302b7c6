/** What a verb is given to speak with, and the two ways a verb ends in words instead of an answer. */
import type { OpenBench, Workbench } from "../app/index.js";
import type { IsoDate } from "../engine/index.js";

/** Exit codes of every verb; `stipule help exit-codes` says them. */
export const exitCodes = { done: 0, failed: 1, usage: 2, problems: 3 } as const;
export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

/** What a verb found out: `data` for --json, `lines` for people. */
export interface Answer {
  readonly data: unknown;
  readonly lines: readonly string[];
  /** Done, but not all of it was well: exit code 3. */
  readonly withProblems?: boolean;
}

/** The command was not understood: a plant that is not there, a value that is no number. Exit code 2. */
export class UsageError extends Error {
  readonly code = "usage";
  constructor(message: string) {
    super(message);
    this.name = "UsageError";
  }
}

/** What the verbs need of the world; tests hand in their own. */
export interface Terminal {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly home: string;
  readonly clock: () => Date;
  /** Root of the program's own files: demo/, dist/web. */
  readonly programRoot: string;
  readonly setExitCode: (code: ExitCode) => void;
}

/** Options that every verb has. */
export interface GlobalOptions {
  readonly book?: string;
  readonly json?: boolean;
  readonly dry?: boolean;
}

/** The book a verb works on. */
export interface OpenDesk {
  readonly workbench: Workbench;
  readonly workers: OpenBench["workers"];
  readonly now: () => Date;
  readonly folder: string;
  readonly today: IsoDate;
  readonly dry: boolean;
}
