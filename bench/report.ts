/** What every bench has in common: the shape of a figure, the machine's name, an aligned table, medians. */
import { cpus, loadavg, totalmem } from "node:os";
import { pathToFileURL } from "node:url";

/** One figure of the program against a target, and where there is one against a named peer measured in the same run. */
export interface Figure {
  readonly figure: string;
  /** What was wanted, in words. */
  readonly target: string;
  /** Who else did the same job; null = the target is absolute. */
  readonly peer: string | null;
  /** Our value with its unit. */
  readonly ours: string;
  readonly peerValue: string | null;
  /** The ratio that the target speaks of; null without a peer. */
  readonly ratio: number | null;
  /** null: nothing was wanted, or it could not be measured here; `target` or `ours` says which. */
  readonly met: boolean | null;
  /** Where the numbers or the material come from. */
  readonly source: string;
  readonly command: string;
}

/** Processor, memory, Node and how much other work the machine has: the mean number of runnable processes of a minute. */
export const machine = (): string =>
  `${cpus().length} x ${cpus()[0]?.model.trim() ?? "unknown processor"}, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.versions.node}, load average ${(loadavg()[0] ?? 0).toFixed(1)}`;

export const verdict = (met: boolean | null): string => (met === null ? "not judged" : met ? "met" : "NOT met");

/** Prints figures as a titled table. */
export const report = (title: string, figures: readonly Figure[]): void => {
  console.log(`\n${title}\n${machine()}`);
  const cells = figures.map(({ figure, ours, peer, peerValue, ratio, target, met }) => [
    figure,
    ours,
    peer === null ? "" : `${peer}: ${peerValue ?? "-"}`,
    ratio === null ? "" : `ratio ${ratio.toFixed(2)}`,
    `wanted: ${target}; ${verdict(met)}`,
  ]);
  const widths = [0, 1, 2, 3].map((column) => Math.max(0, ...cells.map((row) => (row[column] ?? "").length)));
  for (const row of cells) console.log(`  ${row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join("  ")}`.trimEnd());
};

/** Whether the file is what the process was started with, and not only read by another. */
export const isStarted = (url: string): boolean => process.argv[1] !== undefined && pathToFileURL(process.argv[1]).href === url;

/** The middle of several numbers. */
export const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? (sorted[half] ?? Number.NaN) : ((sorted[half - 1] ?? Number.NaN) + (sorted[half] ?? Number.NaN)) / 2;
};

export const milliseconds = (value: number): string => `${value.toFixed(2)} ms`;
