/** A fresh demo book in a folder of its own, and a server on it, for tests of whole paths. Clock and day are fixed. */
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { createJobs, openDemo } from "../../src/app/index.js";
import type { Jobs, OpenBench } from "../../src/app/index.js";
import { createServer } from "../../src/server/index.js";

export const programRoot = resolve(import.meta.dirname, "../..");
export const fixedClock = (): Date => new Date("2022-11-30T12:00:00Z");

export interface DemoBench {
  readonly folder: string;
  readonly bench: OpenBench;
  readonly jobs: Jobs;
  /** Asks the server as its own page would; `init` may say otherwise. */
  readonly ask: (path: string, init?: RequestInit & { host?: string }) => Promise<Response>;
  readonly send: (method: string, path: string, body: unknown) => Promise<Response>;
  /** Errors nobody foresaw, as they were logged. */
  readonly logged: unknown[];
  readonly close: () => Promise<void>;
}

export const openDemoBench = async (webRoot = join(programRoot, "no-such-folder")): Promise<DemoBench> => {
  const folder = await mkdtemp(join(tmpdir(), "stipule-test-"));
  const bench = await openDemo(join(folder, "book"), { clock: fixedClock, programRoot });
  const jobs = createJobs();
  const logged: unknown[] = [];
  const server = createServer(bench, {
    webRoot,
    jobs,
    port: () => 4810,
    checkReplies: true,
    log: (_instance, error) => logged.push(error),
  });
  const ask: DemoBench["ask"] = async (path, { host = "localhost:4810", ...init } = {}) =>
    server.request(`http://localhost:4810${path}`, { ...init, headers: { host, ...(init.headers as Record<string, string> | undefined) } });
  return {
    folder: join(folder, "book"),
    bench,
    jobs,
    logged,
    ask,
    send: (method, path, body) =>
      ask(path, {
        method,
        headers: { "content-type": "application/json", origin: "http://localhost:4810" },
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      }),
    close: async () => {
      await jobs.close();
      await bench.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
};
