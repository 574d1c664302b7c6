/**
 * Brings files one after another, two at a time, and counts what became of them. It lives outside the page, so that going
 * to another place of the book does not stop it, and it tells its watchers at most five times a second, so that ten
 * thousand files do not make ten thousand drawings.
 */
import type { BroughtFile } from "../../../contract/index.js";
import { isPassedOver } from "./collect-files.js";

export interface UploadCounts {
  readonly found: number;
  readonly fresh: number;
  readonly alreadyHere: number;
  readonly refused: number;
  /** Did not reach the server; not kept. */
  readonly failed: number;
  readonly passedOver: number;
}

export interface UploadState {
  readonly phase: "idle" | "running" | "stopping" | "stopped" | "done" | "broken";
  /** Is the walk through the folders over, so that `found` is the whole number? */
  readonly allFound: boolean;
  readonly counts: UploadCounts;
  /** The first five hundred refusals with their reasons; `counts.refused` has them all. */
  readonly refusals: readonly BroughtFile[];
  /** What is on its way now. */
  readonly now: string;
  /** Why it broke off, for `broken`. */
  readonly reason: string;
}

/** Sends one file; throws when the server could not be reached or failed. */
export type SendFile = (file: File) => Promise<BroughtFile>;

export interface UploadQueue {
  readonly state: () => UploadState;
  readonly subscribe: (watcher: () => void) => () => void;
  /** Adds files; begins when nothing is under way. */
  readonly add: (files: AsyncIterable<File>, send: SendFile) => void;
  /** Lets the files that are on their way arrive, takes no more. */
  readonly stop: () => void;
  /** Forgets the last outcome. */
  readonly clear: () => void;
}

const noCounts: UploadCounts = { found: 0, fresh: 0, alreadyHere: 0, refused: 0, failed: 0, passedOver: 0 };
const idle: UploadState = { phase: "idle", allFound: false, counts: noCounts, refusals: [], now: "", reason: "" };

const refusalsKept = 500;
const abreast = 2;
/** So many files in a row that do not arrive mean that the server is gone; going on would only pile up failures. */
const failuresInARow = 3;
const tellEveryMs = 200;

/** A queue of its own; the page has one, tests make their own. */
export const makeUploadQueue = (): UploadQueue => {
  let state = idle;
  let waiting: { files: AsyncIterable<File>; send: SendFile }[] = [];
  let isRunning = false;
  let inARow = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const watchers = new Set<() => void>();
  const tellNow = (): void => {
    clearTimeout(timer);
    timer = undefined;
    for (const watcher of watchers) watcher();
  };
  const change = (part: Partial<UploadState>, atOnce = false): void => {
    state = { ...state, ...part };
    if (atOnce) tellNow();
    else timer ??= setTimeout(tellNow, tellEveryMs);
  };
  const count = (key: keyof UploadCounts): void => change({ counts: { ...state.counts, [key]: state.counts[key] + 1 } });
  const isOn = (): boolean => state.phase === "running";

  const bringOne = async (file: File, send: SendFile): Promise<void> => {
    change({ now: file.name });
    try {
      const outcome = await send(file);
      inARow = 0;
      if (outcome.outcome === "new") count("fresh");
      else if (outcome.outcome === "already-here") count("alreadyHere");
      else {
        count("refused");
        if (state.refusals.length < refusalsKept) change({ refusals: [...state.refusals, outcome] });
      }
    } catch (error) {
      count("failed");
      inARow += 1;
      const reason = error instanceof Error ? error.message : String(error);
      if (inARow >= failuresInARow) change({ phase: "broken", reason });
    }
  };

  const run = async (): Promise<void> => {
    isRunning = true;
    for (let job = waiting.shift(); job !== undefined && isOn(); job = waiting.shift()) {
      const { send } = job;
      const underWay = new Set<Promise<void>>();
      try {
        for await (const file of job.files) {
          if (!isOn()) break;
          if (isPassedOver(file.name)) {
            count("passedOver");
            continue;
          }
          count("found");
          const one = bringOne(file, send).finally(() => underWay.delete(one));
          underWay.add(one);
          if (underWay.size >= abreast) await Promise.race(underWay);
        }
      } catch (error) {
        change({ phase: "broken", reason: error instanceof Error ? error.message : String(error) });
      }
      await Promise.all(underWay);
    }
    isRunning = false;
    const ended = state.phase === "stopping" ? "stopped" : state.phase === "running" ? "done" : state.phase;
    waiting = [];
    change({ phase: ended, allFound: ended === "done", now: "" }, true);
  };

  return {
    state: () => state,
    subscribe: (watcher) => {
      watchers.add(watcher);
      return () => watchers.delete(watcher);
    },
    add: (files, send) => {
      waiting.push({ files, send });
      if (isRunning) return;
      inARow = 0;
      change({ ...idle, phase: "running" }, true);
      void run();
    },
    stop: () => {
      if (isOn()) change({ phase: "stopping" }, true);
    },
    clear: () => {
      if (!isRunning) change(idle, true);
    },
  };
};

/** The page's one queue. */
export const uploadQueue = makeUploadQueue();
