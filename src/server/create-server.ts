/** The local server as a function from request to response; the socket is opened elsewhere. */
import path from "node:path";
import { Hono } from "hono";
import { derivativeMaker } from "../app/index.js";
import type { Jobs, OpenBench, StarterTable } from "../app/index.js";
import { say } from "../words/index.js";
import { ownAddressOnly, securityHeaders } from "./guard.js";
import type { Handlers } from "./handlers.js";
import { mountImages } from "./images.js";
import { mount } from "./mount.js";
import { openApiDocument } from "./openapi.js";
import type { ErrorLog } from "./problem.js";
import { problemOf, problemResponse, RequestProblem } from "./problem.js";
import { mountPublished } from "./published.js";
import { bookHandlers } from "./routes/book.js";
import { pageHandlers } from "./routes/pages.js";
import { photoHandlers } from "./routes/photos.js";
import { plantHandlers } from "./routes/plants.js";
import { recordHandlers } from "./routes/records.js";
import { tableHandlers } from "./routes/tables.js";
import { mountWebFiles } from "./web-files.js";

export interface ServerOptions {
  /** Folder of the built page; may be missing, then a plain page says what to do. */
  readonly webRoot: string;
  readonly jobs: Jobs;
  /** The port the server answers under, for the Host check. */
  readonly port: () => number;
  readonly starters?: readonly StarterTable[];
  readonly version?: string;
  /** Validate replies by the contract too; for tests. */
  readonly checkReplies?: boolean;
  readonly log?: ErrorLog;
}

const handlers: Handlers = {
  ...bookHandlers,
  ...plantHandlers,
  ...recordHandlers,
  ...photoHandlers,
  ...tableHandlers,
  ...pageHandlers,
};

/** Puts the server together for one open book. */
export const createServer = (bench: OpenBench, options: ServerOptions): Hono => {
  const { webRoot, jobs, port, starters = [], version = "0.0.0", checkReplies = false, log = () => undefined } = options;
  const { workbench } = bench;
  const app = new Hono();
  app.use(securityHeaders);
  app.onError((error, c) => {
    const response = problemResponse(problemOf(error, log));
    const range = c.res.headers.get("Content-Range");
    if (range !== null) response.headers.set("Content-Range", range);
    return response;
  });
  app.notFound((c) => {
    throw new RequestProblem(404, "not-here", "problem.title.not-found", say("problem.no-route", { path: c.req.path }));
  });
  app.use(ownAddressOnly(port));
  app.get("/api/openapi.json", (c) => c.json(openApiDocument(version)));
  mount(app, handlers, { bench, workbench, jobs, starters }, { checkReplies });
  mountImages(app, workbench, derivativeMaker(workbench.store, bench.workers));
  mountPublished(app, path.join(workbench.store.folder, "published"));
  mountWebFiles(app, webRoot);
  return app;
};
