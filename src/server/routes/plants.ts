/** Handlers of followed plants, the year and side by side. */
import { apartView, caseView, plantList, plantPage, yearView } from "../../app/index.js";
import type { Handlers } from "../handlers.js";

export const plantHandlers = {
  "GET /api/year": ({ query }, { workbench }) => yearView(workbench, query.upTo),
  "GET /api/plants": ({ query }, { workbench }) => plantList(workbench, query.upTo),
  "GET /api/plants/{plantId}": ({ params, query }, { workbench }) => plantPage(workbench, params.plantId, query.upTo),
  "GET /api/plants/{plantId}/case": ({ params, query }, { workbench }) => caseView(workbench, params.plantId, query.upTo),
  "GET /api/tables/{tableId}/apart": ({ params, query }, { workbench }) => apartView(workbench, params.tableId, query.taxa),
} satisfies Partial<Handlers>;
