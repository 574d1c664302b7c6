/**
 * The photographs of the demo year as one piece of work: drawn into a folder beside the book, brought from there like any
 * others while the next are drawn, then sorted as the demo's teacher did. Every step passes over what is there, so the next
 * start goes on where a killed one stopped.
 */
import { readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { renderPlate } from "../media/index.js";
import { readDemoYear } from "../engine/index.js";
import type { DemoYear } from "../engine/index.js";
import { say } from "../words/index.js";
import { bringPhotos } from "./bring-photos.js";
import type { PhotoSource } from "./bring-photos.js";
import { demoPhotoFolder } from "./demo/demo-photo-folder.js";
import { demoPhotoEdition, drawDemoPhotos } from "./demo/draw-demo-photos.js";
import type { DemoPhotoFolder } from "./demo/draw-demo-photos.js";
import type { Jobs, JobControl } from "./jobs.js";
import type { OpenBench } from "./open-workbench.js";
import { sortDemoPhotos } from "./sort-demo-photos.js";

/** Where the drawn photographs lie: beside the book, so that bringing a folder can be tried with them. */
export const demoPhotoPath = (bookFolder: string): string => `${bookFolder}-photographs`;

/** Photographs of another edition of the demo are drawn anew; nothing else in the folder is touched. */
const clearOtherEdition = async (path: string, edition: string, names: readonly string[]): Promise<void> => {
  const mark = join(path, ".edition");
  const found = await readFile(mark, "utf8").catch(() => "");
  if (found === edition) return;
  for (const name of [...names, "truth.json"]) await rm(join(path, name), { force: true });
  await writeFile(mark, edition);
};

/** Names as they become whole in the folder, those that are there first. */
const arrivals = (folder: DemoPhotoFolder, isPhoto: (name: string) => boolean) => {
  const ready: string[] = [];
  let isOver = false;
  let wake = (): void => undefined;
  const arrived = (name: string): void => {
    if (isPhoto(name)) ready.push(name);
    wake();
  };
  const watched: DemoPhotoFolder = {
    ...folder,
    write: async (name, bytes) => {
      await folder.write(name, bytes);
      arrived(name);
    },
  };
  async function* sources(): AsyncGenerator<PhotoSource> {
    for (;;) {
      const name = ready.shift();
      if (name !== undefined) yield { name, open: () => folder.read(name) };
      else if (isOver) return;
      else await new Promise<void>((resolve) => (wake = resolve));
    }
  }
  return {
    watched,
    sources,
    arrived,
    over: () => {
      isOver = true;
      wake();
    },
  };
};

const runDemoPhotos = async (bench: OpenBench, json: unknown, demo: DemoYear, { signal, progress }: JobControl): Promise<number> => {
  const { store } = bench.workbench;
  const path = demoPhotoPath(store.folder);
  const names = demo.photos.map((photo) => photo.file);
  const here = new Set((await store.list("photo")).map((photo) => photo.fileName));
  const folder = await demoPhotoFolder(path);
  await clearOtherEdition(path, demoPhotoEdition(json), names);
  const queue = arrivals(folder, (name) => names.includes(name) && !here.has(name));
  for (const name of await folder.list()) queue.arrived(name);
  let done = names.filter((name) => here.has(name)).length;
  progress(done, names.length);
  const bringing = bringPhotos(queue.sources(), {
    store,
    workers: bench.workers(),
    now: bench.now,
    signal,
    onOutcome: () => progress((done += 1), names.length),
  });
  // A failure of the drawing ends the bringing as well; both are waited for before either is told.
  const drawing = drawDemoPhotos({ demo: json, folder: queue.watched, render: renderPlate, signal, atOnce: 1 }).finally(queue.over);
  const [drawn, brought] = await Promise.allSettled([drawing, bringing]);
  for (const part of [drawn, brought]) if (part.status === "rejected") throw part.reason as Error;
  if (!signal.aborted) await sortDemoPhotos(store, demo.photos);
  return names.length;
};

/**
 * Starts the work unless it was finished before: photographs missing or not sorted yet. Does nothing in any other book.
 * @returns the id of the job, or undefined when there is nothing to do
 */
export const startDemoPhotos = async (bench: OpenBench, jobs: Jobs, programRoot: string): Promise<string | undefined> => {
  const { store } = bench.workbench;
  const info = await store.info();
  if (!info.illustrative) return undefined;
  const json = JSON.parse(await readFile(join(programRoot, "demo", "hobbin-carr.json"), "utf8")) as unknown;
  const demo = readDemoYear(json);
  if (info.title !== demo.content.info.title) return undefined;
  const here = new Set((await store.list("photo")).map((photo) => photo.fileName));
  const isWhole = demo.photos.every((photo) => photo.copyOf !== undefined || here.has(photo.file));
  const isSorted = (await store.list("outing")).some((outing) => outing.cameraShiftS !== null);
  if (isWhole && isSorted) return undefined;
  const { id } = jobs.start({
    kind: "demo-photos",
    label: say("job.demo"),
    total: demo.photos.length,
    run: (control) => runDemoPhotos(bench, json, demo, control),
    say: (count) => say("job.demo-done", { count }),
  });
  return id;
};
