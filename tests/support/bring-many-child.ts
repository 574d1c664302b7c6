/**
 * A process of its own that brings many small photographs, all different, into a real book, so that its memory is nobody
 * else's. It is stopped by its signal after a third and then brings them all. Says JSON lines of kind {@link ManySaid}.
 * Arguments: the book's folder, how many.
 */
import { writeSync } from "node:fs";
import { bringPhotos } from "../../src/app/bring-photos.js";
import type { BringReport, PhotoSource } from "../../src/app/bring-photos.js";
import { openPhotoWorkers } from "../../src/media/index.js";
import { openBook } from "../../src/store/index.js";
import { smallJpeg } from "./odd-photos.js";
import { fixedClock } from "./store-sample.js";

export interface ManySaid {
  readonly run: "stopped" | "whole";
  readonly report?: Omit<BringReport, "files"> & { readonly files: number; readonly seconds: number };
  readonly done?: number;
  readonly rssMb?: number;
}
/** Bytes of all files together: far more than may stay in memory, however few or many there are. */
const bytesOfAll = 120_000_000;

const run = async (book: string, count: number): Promise<void> => {
  const say = (said: ManySaid): void => void writeSync(1, `${JSON.stringify(said)}\n`);
  const picture = await smallJpeg(1);
  /** The picture with comment segments before its own (ITU-T T.81, B.2.4.5): another file for each number. */
  const jpeg = (k: number): Buffer => {
    const segments: Buffer[] = [];
    for (let left = Math.floor(bytesOfAll / count); left > 0; left -= 65_533) {
      const segment = Buffer.alloc(Math.max(16, Math.min(left, 65_533)) + 4, `${k} `);
      segment.writeUInt16BE(0xfffe, 0);
      segment.writeUInt16BE(segment.length - 2, 2);
      segments.push(segment);
    }
    return Buffer.concat([picture.subarray(0, 2), ...segments, picture.subarray(2)]);
  };
  function* many(): Generator<PhotoSource> {
    for (let k = 0; k < count; k += 1) yield { name: `${String(k).padStart(5, "0")}.jpg`, open: () => jpeg(k) };
  }
  const store = await openBook(book, { clock: fixedClock });
  const workers = openPhotoWorkers({ threads: 2 });
  for (const run of ["stopped", "whole"] as const) {
    const abort = new AbortController();
    const started = performance.now();
    let last = 0;
    const { files, ...report } = await bringPhotos(many(), {
      store,
      workers,
      now: fixedClock,
      signal: abort.signal,
      progress: (done) => {
        if (done !== last + 1) throw new RangeError(`progress went from ${last} to ${done}`);
        last = done;
        if (run === "stopped" && done === Math.floor(count / 3)) abort.abort();
        if (done % Math.floor(count / 20) === 0) say({ run, done, rssMb: process.memoryUsage().rss / 1024 / 1024 });
      },
    });
    say({ run, report: { ...report, files: files.length, seconds: (performance.now() - started) / 1000 } });
  }
  await workers.close();
  await store.close();
};

const [, program, book, count] = process.argv;
if (/bring-many-child\.[jt]s$/.test(program ?? "") && book !== undefined) await run(book, Number(count));
