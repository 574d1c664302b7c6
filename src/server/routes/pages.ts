/** Handlers of species pages. */
import { relative, sep } from "node:path";
import { draftPage, listPages, publishPage } from "../../app/index.js";
import type { Handlers } from "../handlers.js";

/** Where a published folder of the book is looked at on this server. */
export const publishedUrl = (bookFolder: string, folder: string): string =>
  `/${relative(bookFolder, folder).split(sep).map(encodeURIComponent).join("/")}/`;

export const pageHandlers = {
  "GET /api/pages": async (_input, { workbench }) => ({ pages: await listPages(workbench) }),
  "GET /api/pages/{tableId}/{taxonId}": ({ params }, { workbench }) => draftPage(workbench, params, (id) => `/image/${id}/2048`),
  "POST /api/pages/{tableId}/{taxonId}/publish": async ({ params, body }, { workbench, bench }) => {
    const workers = bench.workers();
    const page = await publishPage(
      workbench,
      params,
      { publicImage: (path, options) => workers.publicImage(path, options) },
      { pdf: body.pdf, paper: body.paper },
    );
    return { ...page, url: publishedUrl(workbench.store.folder, page.folder) };
  },
} satisfies Partial<Handlers>;
