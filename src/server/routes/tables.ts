/** Handlers of reference tables. */
import { getTable, removeTable, tableCsv, takeStarterTable, takeTableCsv } from "../../app/index.js";
import type { Handlers } from "../handlers.js";

export const tableHandlers = {
  "GET /api/tables": async (_input, { workbench }) => ({ tables: await workbench.store.tables() }),
  "GET /api/tables/{tableId}": ({ params }, { workbench }) => getTable(workbench, params.tableId),
  "POST /api/tables": ({ body }, { workbench }) => takeTableCsv(workbench, body),
  "GET /api/tables/{tableId}/csv": async ({ params }, { workbench }) => ({ csv: await tableCsv(workbench, params.tableId) }),
  "DELETE /api/tables/{tableId}": async ({ params }, { workbench }) => ({ edit: await removeTable(workbench, params.tableId) }),
  "GET /api/starter-tables": async (_input, { workbench, starters }) => {
    const here = new Set((await workbench.store.tables()).map((table) => table.title));
    return { tables: starters.map(({ key, title, notice }) => ({ key, title, notice, inBook: here.has(title) })) };
  },
  "POST /api/starter-tables/{key}": ({ params }, { workbench, starters }) => takeStarterTable(workbench, starters, params.key),
} satisfies Partial<Handlers>;
