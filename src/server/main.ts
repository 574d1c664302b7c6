/** The socket: opens the book, listens on the loopback address, stops in order. */
import { createServer as createSocket } from "node:http";
import type { Server } from "node:http";
import { readFileSync } from "node:fs";
import path from "node:path";
import { getRequestListener } from "@hono/node-server";
import type { Logger } from "pino";
import { createJobs, openDemo, openOrBeginBook, starterTables, startDemoPhotos } from "../app/index.js";
import type { OpenBench } from "../app/index.js";
import { say } from "../words/index.js";
import { createServer } from "./create-server.js";

export const defaultPort = 4810;
/** How many ports are tried when none was asked for. */
const portsTried = 10;

/** The server cannot start; the message says why and what to do. */
export class CannotServe extends Error {
  readonly code: "port-taken" | "port-forbidden";
  constructor(code: CannotServe["code"], message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = "CannotServe";
    this.code = code;
  }
}

export interface ServeOptions {
  readonly folder: string;
  /** The demo's folder: its year is laid down when it is not there yet. */
  readonly isDemo: boolean;
  /** Only this port; undefined = {@link defaultPort} or one of the next nine. */
  readonly port?: number;
  readonly programRoot: string;
  readonly clock: () => Date;
  /** Says a line to the person who started it. */
  readonly tell: (line: string) => void;
}

export interface Running {
  readonly url: string;
  readonly port: number;
  /** Stops taking requests, ends jobs, closes the book. Twice is once. */
  readonly stop: () => Promise<void>;
}

const errnoOf = (error: unknown): unknown => (error instanceof Error && "code" in error ? error.code : undefined);

const listen = (socket: Server, port: number): Promise<void> =>
  new Promise((resolve, reject) => {
    socket.once("error", reject);
    socket.listen({ port, host: "127.0.0.1", exclusive: true }, () => {
      socket.off("error", reject);
      resolve();
    });
  });

/** @returns the port that was free. @throws {CannotServe} */
const listenSomewhere = async (socket: Server, wanted: number | undefined, tell: (line: string) => void): Promise<number> => {
  const first = wanted ?? defaultPort;
  const last = wanted === undefined ? first + portsTried - 1 : first;
  for (let port = first; port <= last; port += 1) {
    try {
      await listen(socket, port);
      if (port !== first) tell(say("serve.port-moved", { wanted: String(first), port: String(port) }));
      return port;
    } catch (error) {
      if (errnoOf(error) === "EACCES")
        throw new CannotServe("port-forbidden", say("serve.port-forbidden", { port: String(port) }), { cause: error });
      if (errnoOf(error) !== "EADDRINUSE") throw error;
    }
  }
  throw new CannotServe(
    "port-taken",
    wanted === undefined
      ? say("serve.ports-taken", { from: String(first), to: String(last) })
      : say("serve.port-taken", { port: String(wanted) }),
  );
};

const versionOf = (programRoot: string): string =>
  (JSON.parse(readFileSync(path.join(programRoot, "package.json"), "utf8")) as { version: string }).version;

const openBench = async ({ folder, isDemo, clock, programRoot, tell }: ServeOptions): Promise<OpenBench> => {
  if (isDemo) return openDemo(folder, { clock, programRoot });
  const { timeZone: zone } = Intl.DateTimeFormat().resolvedOptions();
  const { bench, begun } = await openOrBeginBook(folder, { title: say("begin.default-title"), zone }, { clock, programRoot });
  if (begun) tell(say("serve.begun", { folder }));
  return bench;
};

/**
 * Serves a book; begins one where the folder is not there yet or is empty. Nothing of it is read before the first request
 * but what opening takes.
 * @throws {CannotServe}, the store's tagged errors (book-locked, book-damaged, book-too-new, folder-not-writable, ...)
 */
export const serveBook = async (options: ServeOptions): Promise<Running> => {
  const { programRoot, tell } = options;
  const bench = await openBench(options);
  // Loaded with the first fault: an ordinary start does not wait for it.
  let logger: Promise<Logger> | undefined;
  const log = (instance: string, error: unknown): void => {
    logger ??= import("pino").then(({ pino }) => pino({ name: "stipule" }, pino.destination({ dest: 2, sync: true })));
    void logger.then((to) => to.error({ instance, err: error }, "unforeseen"));
  };
  const jobs = createJobs((job, error) => log(job.id, error));
  let port = 0;
  const server = createServer(bench, {
    webRoot: path.join(programRoot, "dist", "web"),
    jobs,
    starters: starterTables(programRoot),
    port: () => port,
    version: versionOf(programRoot),
    log,
  });
  const answer = getRequestListener(server.fetch, { overrideGlobalObjects: false });
  const socket = createSocket((request, response) => {
    // Errors of handlers are replies by now; what is left is a connection that broke while being answered.
    answer(request, response).catch((error: unknown) => log("socket", error));
  });
  try {
    port = await listenSomewhere(socket, options.port, tell);
  } catch (error) {
    await bench.close();
    throw error;
  }
  // Decided after the socket listens, so that the page is there at once.
  if (options.isDemo && (await startDemoPhotos(bench, jobs, programRoot)) !== undefined) tell(say("serve.demo"));
  let stopping: Promise<void> | undefined;
  const stop = async (): Promise<void> => {
    const closed = new Promise((resolve) => socket.close(resolve));
    socket.closeIdleConnections();
    await jobs.close();
    // Pages keep connections open; a reply that still runs has a moment to end.
    const late = setTimeout(() => socket.closeAllConnections(), 2000);
    await closed;
    clearTimeout(late);
    await bench.close();
  };
  return { url: `http://localhost:${port}`, port, stop: () => (stopping ??= stop()) };
};
