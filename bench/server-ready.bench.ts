/**
 * From starting `stipule serve` on a book of 10,000 photographs to its first answer about the book, as a person waits for it in
 * the morning: the backup of the day is due. Run with `npx tsx bench/server-ready.bench.ts` after `npm run build`. Beside it, in
 * turn: Node starting the same HTTP library with one fixed reply. Five starts each, medians, and the median of the ratios of
 * neighbours. Wanted: 1 s on a machine without other work.
 */
import { rmSync } from "node:fs";
import { join } from "node:path";
import { largeBook } from "./large-book.js";
import { isStarted, median, milliseconds, report, type Figure } from "./report.js";
import { startServer } from "./start-server.js";

const starts = 5;
const root = join(import.meta.dirname, "..");

/** Milliseconds from the start of the process to the end of the first good reply; the process is ended again. */
const untilAnswer = async (file: string, args: (port: number) => readonly string[]): Promise<number> => {
  const { readyMs, stop } = await startServer(file, args);
  await stop();
  return readyMs;
};

/** Measures; see the head of the file. */
export const serverReadyFigures = async (): Promise<readonly Figure[]> => {
  const book = await largeBook();
  const ours = (): Promise<number> => {
    rmSync(join(book, "backups"), { recursive: true, force: true });
    return untilAnswer(join(root, "bin", "stipule.js"), (port) => ["serve", "--book", book, "--port", String(port), "--no-open"]);
  };
  const bare = (): Promise<number> => untilAnswer(join(root, "bench", "bare-server.mjs"), (port) => [String(port)]);
  // Files are in the memory of the machine afterwards.
  await ours();
  await bare();
  const [ourTimes, bareTimes]: [number[], number[]] = [[], []];
  for (let start = 0; start < starts; start += 1) {
    ourTimes.push(await ours());
    bareTimes.push(await bare());
  }
  const common = { source: "10,000 records made by bench/large-book.ts", command: "npx tsx bench/server-ready.bench.ts" };
  return [
    {
      figure: "first answer of the server, book of 10,000 photographs",
      target: "at most 1000 ms on a machine without other work",
      peer: null,
      ours: milliseconds(median(ourTimes)),
      peerValue: null,
      ratio: null,
      met: median(ourTimes) <= 1000,
      ...common,
    },
    {
      figure: "first answer of the server, against the HTTP library alone",
      target: "none set; for comparison",
      peer: "node with Hono and one fixed reply",
      ours: milliseconds(median(ourTimes)),
      peerValue: milliseconds(median(bareTimes)),
      ratio: median(ourTimes.map((time, k) => time / (bareTimes[k] ?? Number.NaN))),
      met: null,
      ...common,
    },
  ];
};

if (isStarted(import.meta.url)) report("From start to first answer", await serverReadyFigures());
