/**
 * A pool of worker threads that read photographs, so that the program stays awake while pixels are decoded. Runs from the
 * TypeScript sources (tests, `tsx`) and compiled.
 */
import { availableParallelism } from "node:os";
import type { Piscina } from "piscina";
import { fail } from "../engine/index.js";
import type { Result } from "../engine/index.js";
import { derivativeSizes } from "./derivative-sizes.js";
import type { DerivativePx } from "./derivative-sizes.js";
import type { PhotoRefusal } from "./photo-refusal.js";
import type { PublicImage, PublicImageOptions } from "./public-image.js";
import type { ReadPhoto } from "./worker.js";

export interface PhotoWorkers {
  readonly threads: number;
  /**
   * Reads a photograph: header, metadata, and the derivatives asked for (both when not said).
   *
   * @throws the signal's reason when it is aborted before the file is begun; a file that is being read is finished.
   */
  read(
    path: string,
    options?: { readonly sizes?: readonly DerivativePx[]; readonly signal?: AbortSignal },
  ): Promise<Result<ReadPhoto, PhotoRefusal>>;
  publicImage(path: string, options: PublicImageOptions): Promise<Result<PublicImage, PhotoRefusal>>;
  /** Ends the threads; what is being read is finished first. */
  close(): Promise<void>;
}

/**
 * Opens the pool. Threads start when there is work and end after half a minute without.
 *
 * @param options.threads - One for each processor when missing, four at most.
 * @param options.timeoutMs - After that a file is refused and its thread replaced; two minutes when missing.
 */
export const openPhotoWorkers = (options: { readonly threads?: number; readonly timeoutMs?: number } = {}): PhotoWorkers => {
  const threads = options.threads ?? Math.min(4, availableParallelism());
  const timeoutMs = options.timeoutMs ?? 120_000;
  let opened: Promise<Piscina> | undefined;
  const pool = (): Promise<Piscina> =>
    (opened ??= import("piscina").then(
      (module) =>
        new module.Piscina({
          filename: workerFile(),
          minThreads: 0,
          maxThreads: threads,
          idleTimeout: 30_000,
          atomics: "disabled",
          closeTimeout: timeoutMs,
        }),
    ));
  /** Tasks wait here and not in the pool, so that a signal can take one back that has not begun and time runs only while it is read. */
  let free = threads;
  const waiting: (() => void)[] = [];
  const turn = async (): Promise<void> => {
    if (free > 0) free -= 1;
    else await new Promise<void>((resolve) => waiting.push(resolve));
  };
  const done = (): void => {
    const next = waiting.shift();
    if (next === undefined) free += 1;
    else next();
  };
  const run = async <T>(name: string, task: object, signal?: AbortSignal): Promise<Result<T, PhotoRefusal>> => {
    await turn();
    const late = new AbortController();
    let timer: NodeJS.Timeout | undefined;
    try {
      signal?.throwIfAborted();
      const ready = await pool();
      timer = setTimeout(() => late.abort(), timeoutMs);
      return (await ready.run(task, { name, signal: late.signal })) as Result<T, PhotoRefusal>;
    } catch (error) {
      if (!late.signal.aborted) throw error;
      return fail({ code: "took-too-long", values: { seconds: Math.round(timeoutMs / 1000) } });
    } finally {
      clearTimeout(timer);
      done();
    }
  };
  return {
    threads,
    read: (path, { sizes = derivativeSizes, signal } = {}) => run<ReadPhoto>("readPhoto", { path, sizes }, signal),
    publicImage: (path, imageOptions) => run<PublicImage>("makePublicImage", { path, options: imageOptions }),
    close: async () => await (await opened)?.close(),
  };
};

/** The worker beside this file; from the sources it is TypeScript, and the thread needs help to read it. */
const workerFile = (): string =>
  new URL(import.meta.url.endsWith(".ts") ? "./worker-from-sources.mjs" : "./worker.js", import.meta.url).href;
