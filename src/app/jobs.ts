/**
 * Long pieces of work, in memory: how far they are, stopping them, what came of them. They end with the process; each is
 * made so that starting it again goes on where it stopped.
 */
import { randomUUID } from "node:crypto";
import type { Job } from "../contract/index.js";
import { say } from "../words/index.js";
import { notInBook } from "./app-error.js";

/** Given to the work: tell how far it is, and look whether it should stop. */
export interface JobControl {
  readonly signal: AbortSignal;
  readonly progress: (done: number, total: number) => void;
}

export interface JobWork<T> {
  readonly kind: Job["kind"];
  readonly label: string;
  readonly total?: number;
  readonly run: (control: JobControl) => Promise<T>;
  /** What to say at the end. */
  readonly say: (result: T) => string;
}

export interface Jobs {
  /** Starts at once; the promise settles when the work has ended and never rejects. */
  readonly start: <T>(work: JobWork<T>) => { readonly id: string; readonly job: Job; readonly ended: Promise<T | undefined> };
  readonly list: () => readonly Job[];
  /** @throws {NotInBook} */
  readonly get: (id: string) => Job;
  /** Asks a job to stop; what it finished stays. @throws {NotInBook} */
  readonly cancel: (id: string) => Job;
  /** What the newest ended job of a kind gave. */
  readonly lastResult: (kind: Job["kind"]) => unknown;
  /** Stops all and waits for them. */
  readonly close: () => Promise<void>;
}

/** Ended jobs kept for the list. */
const kept = 50;

/** @param onFailure is told of failures of the work with their stack; the list shows the message only. */
export const createJobs = (onFailure: (job: Job, error: unknown) => void = () => undefined): Jobs => {
  const jobs = new Map<string, { job: Job; abort: AbortController; ended: Promise<unknown> }>();
  const results = new Map<Job["kind"], unknown>();

  const find = (id: string) => {
    const entry = jobs.get(id);
    if (entry === undefined) throw notInBook("job", id);
    return entry;
  };

  const start = <T>(work: JobWork<T>) => {
    const id = randomUUID();
    const abort = new AbortController();
    const first: Job = { id, kind: work.kind, label: work.label, done: 0, total: work.total ?? 0, state: "running", message: "" };
    const update = (change: Partial<Job>): void => {
      const entry = jobs.get(id);
      if (entry !== undefined) entry.job = { ...entry.job, ...change };
    };
    const run = async (): Promise<T | undefined> => {
      try {
        const result = await work.run({ signal: abort.signal, progress: (done, total) => update({ done, total }) });
        results.set(work.kind, result);
        update({
          state: abort.signal.aborted ? "cancelled" : "done",
          message: abort.signal.aborted ? say("job.cancelled") : work.say(result),
        });
        return result;
      } catch (error) {
        const why = error instanceof Error ? error.message : String(error);
        update(
          abort.signal.aborted
            ? { state: "cancelled", message: say("job.cancelled") }
            : { state: "failed", message: say("job.failed", { why }) },
        );
        if (!abort.signal.aborted) onFailure(find(id).job, error);
        return undefined;
      }
    };
    jobs.set(id, { job: first, abort, ended: Promise.resolve() });
    // Begins in the next turn, so that the caller has the id before the work says anything.
    const ended = Promise.resolve().then(run);
    jobs.set(id, { job: first, abort, ended });
    const over = [...jobs.values()].filter((entry) => entry.job.state !== "running");
    for (const entry of over.slice(0, Math.max(0, over.length - kept))) jobs.delete(entry.job.id);
    return { id, job: first, ended };
  };

  return {
    start,
    list: () => [...jobs.values()].map((entry) => entry.job).reverse(),
    get: (id) => find(id).job,
    cancel: (id) => {
      const entry = find(id);
      entry.abort.abort();
      return entry.job;
    },
    lastResult: (kind) => results.get(kind),
    close: async () => {
      for (const entry of jobs.values()) if (entry.job.state === "running") entry.abort.abort();
      await Promise.all([...jobs.values()].map((entry) => entry.ended));
    },
  };
};
