/** What every bench prints: the machine, then one aligned table. Times are medians in milliseconds. */
import { cpus, totalmem } from "node:os";
import { performance } from "node:perf_hooks";

export interface BenchRow {
  readonly what: string;
  readonly value: string;
  readonly note?: string;
}

/** Prints a titled table. */
export const report = (title: string, rows: readonly BenchRow[]): void => {
  const machine = `${cpus().length} x ${cpus()[0]?.model.trim() ?? "unknown processor"}, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.versions.node}`;
  console.log(`\n${title}\n${machine}`);
  const width = Math.max(...rows.map((row) => row.what.length));
  const column = Math.max(...rows.map((row) => row.value.length));
  for (const row of rows) console.log(`  ${row.what.padEnd(width)}  ${row.value.padStart(column)}  ${row.note ?? ""}`.trimEnd());
};

/** The middle of several numbers. */
export const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? (sorted[half] ?? Number.NaN) : ((sorted[half - 1] ?? Number.NaN) + (sorted[half] ?? Number.NaN)) / 2;
};

/** Times a call `runs` times after `warm` calls that do not count; milliseconds each. */
export const timeCalls = (
  call: (run: number) => void,
  { runs, warm }: { readonly runs: number; readonly warm: number },
): readonly number[] => {
  for (let run = 0; run < warm; run += 1) call(run);
  return Array.from({ length: runs }, (_, run) => {
    const start = performance.now();
    call(warm + run);
    return performance.now() - start;
  });
};

export const milliseconds = (value: number): string => `${value.toFixed(2)} ms`;
