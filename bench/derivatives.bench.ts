/**
 * Small copies of 50 twelve-megapixel JPEGs by the workers, against bare sharp doing the same in the same run: run with
 * `npx tsx bench/derivatives.bench.ts [count]`. Bare sharp is decode, resize to 2048, encode, resize that to 320, encode, as
 * many at once as the workers have threads (one a processor), with bytes that are read from the file too; the workers add the
 * look at the format, the limits, the metadata and the way between threads. Five rounds of both in turn, who begins changing;
 * the middle of the five ratios counts, since other work on the machine may fall on one of a pair. The ratio of processor time
 * stands beside: it hardly feels other work. Wanted: 0.85 or more of the speed of bare sharp.
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";
import sharp from "sharp";
import type { Sharp } from "sharp";
import { openPhotoWorkers } from "../src/media/index.js";
import { isStarted, median, milliseconds, report, type Figure } from "./report.js";

const [width, height] = [4000, 3000];
const threads = Math.min(4, availableParallelism());

/** Coloured ellipses under noise, from a seed: about the detail of a photograph of plants. */
const syntheticPhoto = async (seed: number): Promise<Buffer> => {
  let state = seed >>> 0;
  const random = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  const noise = Buffer.alloc(width * height * 3);
  for (let index = 0; index < noise.length; index += 1) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    noise[index] = 100 + (state >>> 26);
  }
  const ellipses = Array.from({ length: 400 }, () => {
    const [x, y, rx, ry] = [random() * width, random() * height, 10 + random() * 300, 10 + random() * 150];
    const colour = [random() * 200, 60 + random() * 195, random() * 140].map(Math.round).join(",");
    return `<ellipse cx="${x}" cy="${y}" rx="${rx}" ry="${ry}" fill="rgb(${colour})" fill-opacity=".7"/>`;
  });
  const drawing = Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">${ellipses.join("")}</svg>`);
  return await sharp(noise, { raw: { width, height, channels: 3 } })
    .composite([{ input: drawing }])
    .jpeg({ quality: 90 })
    .toBuffer();
};

/** Measures; see the head of the file. @param count how many photographs */
export const derivativeFigures = async (count = 50): Promise<readonly Figure[]> => {
  const folder = mkdtempSync(join(tmpdir(), "stipule-bench-"));
  const workers = openPhotoWorkers({ threads });
  try {
    const paths: string[] = [];
    let bytes = 0;
    // Ten pictures, each written several times: drawing them is not what is measured.
    const pictures: Buffer[] = [];
    for (let k = 0; k < Math.min(10, count); k += 1) pictures.push(await syntheticPhoto(k + 1));
    for (let k = 0; k < count; k += 1) {
      const picture = pictures[k % pictures.length];
      if (picture === undefined) continue;
      const path = join(folder, `${k}.jpg`);
      writeFileSync(path, picture);
      bytes += picture.length;
      paths.push(path);
    }

    const bare = async (path: string): Promise<void> => {
      const { data, info } = await sharp(await readFile(path))
        .autoOrient()
        .resize(2048, 2048, { fit: "inside", withoutEnlargement: true })
        .raw()
        .toBuffer({ resolveWithObject: true });
      const pixels = (): Sharp => sharp(data, { raw: { width: info.width, height: info.height, channels: info.channels } });
      await pixels().jpeg({ quality: 82 }).toBuffer();
      await pixels().resize(320, 320, { fit: "inside", withoutEnlargement: true }).jpeg({ quality: 78 }).toBuffer();
    };
    const ours = async (path: string): Promise<void> => {
      const read = await workers.read(path);
      if (!read.ok) throw new Error(`refused: ${read.problem.code}`);
    };
    interface Spent {
      readonly wall: number;
      readonly cpu: number;
    }
    const seconds = async (work: (path: string) => Promise<void>, lanes: number): Promise<Spent> => {
      const begin = performance.now();
      // Of the whole process: the worker threads and sharp's own count.
      const cpu = process.cpuUsage();
      let next = 0;
      const lane = async (): Promise<void> => {
        while (next < paths.length) {
          const path = paths[next];
          next += 1;
          if (path !== undefined) await work(path);
        }
      };
      await Promise.all(Array.from({ length: lanes }, lane));
      const wall = (performance.now() - begin) / 1000;
      const { user, system } = process.cpuUsage(cpu);
      return { wall, cpu: (user + system) / 1e6 };
    };

    sharp.concurrency(1);
    sharp.cache(false);
    // The threads start and both ways are warm before time is taken.
    await Promise.all(paths.slice(0, threads * 2).map(ours));
    await Promise.all(paths.slice(0, threads * 2).map(bare));
    const rounds: { bare: Spent; ours: Spent }[] = [];
    for (let round = 0; round < 5; round += 1) {
      const bareRound = (): Promise<Spent> => seconds(bare, threads);
      // One more asked for than there are threads, as when photographs are brought: the next waits at the door.
      const ourRound = (): Promise<Spent> => seconds(ours, threads + 1);
      const first = await (round % 2 === 0 ? bareRound() : ourRound());
      const second = await (round % 2 === 0 ? ourRound() : bareRound());
      rounds.push(round % 2 === 0 ? { bare: first, ours: second } : { bare: second, ours: first });
    }
    const ratio = median(rounds.map((round) => round.bare.wall / round.ours.wall));
    const cpuRatio = median(rounds.map((round) => round.bare.cpu / round.ours.cpu));
    const common = {
      peer: `bare sharp, ${threads} at once`,
      source: `${paths.length} drawn photographs of 12 megapixels, ${(bytes / 1e6).toFixed(0)} MB`,
      command: "npx tsx bench/derivatives.bench.ts",
    };
    const each = (of: (round: { bare: Spent; ours: Spent }) => number): string =>
      milliseconds((median(rounds.map(of)) * 1000) / paths.length);
    return [
      {
        figure: "small copies of a photograph, speed against bare sharp",
        target: "0.85 or more of its speed",
        ours: each((round) => round.ours.wall),
        peerValue: each((round) => round.bare.wall),
        ratio,
        met: ratio >= 0.85,
        ...common,
      },
      {
        figure: "small copies of a photograph, processor time against bare sharp",
        target: "none set; for comparison",
        ours: each((round) => round.ours.cpu),
        peerValue: each((round) => round.bare.cpu),
        ratio: cpuRatio,
        met: null,
        ...common,
      },
    ];
  } finally {
    await workers.close();
    rmSync(folder, { recursive: true, force: true });
  }
};

if (isStarted(import.meta.url)) {
  const count = Number(process.argv[2] ?? 50);
  report("Small copies of photographs", await derivativeFigures(count));
}
