/** Handlers of the book as a whole. */
import { bookOverview, writeInfo } from "../../app/index.js";
import type { Handlers } from "../handlers.js";

export const bookHandlers = {
  "GET /api/book": (_input, { workbench, jobs }) => bookOverview(workbench, jobs.list()),
  "PUT /api/book": async ({ body }, { workbench, jobs }) => {
    await writeInfo(workbench, body);
    return bookOverview(workbench, jobs.list());
  },
  "GET /api/history": async ({ query }, { workbench }) => ({ edits: await workbench.store.history(query.limit) }),
  "POST /api/undo": async (_input, { workbench }) => ({ edit: await workbench.store.undo() }),
  "POST /api/redo": async (_input, { workbench }) => ({ edit: await workbench.store.redo() }),
  "POST /api/proof": ({ signal }, { workbench }) => workbench.store.proof(undefined, signal),
  "GET /api/jobs": async (_input, { jobs }) => ({ jobs: jobs.list() }),
  "DELETE /api/jobs/{jobId}": async ({ params }, { jobs }) => jobs.cancel(params.jobId),
} satisfies Partial<Handlers>;
