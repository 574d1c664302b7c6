/** Handlers of photographs: the sheets, bringing, the clock. */
import { changeSheets, getSheet, listSheets } from "../../app/index.js";
import type { Handlers } from "../handlers.js";

export const photoHandlers = {
  "GET /api/sheets": async (_input, { workbench }) => ({ sheets: await listSheets(workbench) }),
  "GET /api/sheets/{photoId}": ({ params }, { workbench }) => getSheet(workbench, params.photoId),
  "PATCH /api/sheets": ({ body }, { workbench }) => changeSheets(workbench, body.ids, body.change),
} satisfies Partial<Handlers>;
