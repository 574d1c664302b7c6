/** Reference tables: list, read, bring in from CSV, give out as CSV. */
import { z } from "zod";
import { referenceTable, tableId } from "../engine/index.js";
import { editSummary } from "./common.js";
import { route } from "./route.js";

export const tableSummary = z.object({
  id: tableId,
  title: z.string(),
  notice: z.string(),
  taxonCount: z.number().int(),
  characterCount: z.number().int(),
  scoreCount: z.number().int(),
});
export type TableSummaryView = z.infer<typeof tableSummary>;

export const tableReport = z.object({
  accepted: z.boolean(),
  table: tableSummary.nullable(),
  /** Row by row what is wrong; nothing is brought in while there is one. */
  problems: z.array(z.object({ code: z.string(), where: z.string(), value: z.string().optional(), text: z.string() })),
  /** Things to know that do not stop it. */
  remarks: z.array(z.object({ code: z.string(), where: z.string(), value: z.string().optional(), text: z.string() })),
  edit: editSummary.nullable(),
});
export type TableReport = z.infer<typeof tableReport>;

const tableParams = z.object({ tableId });

export const tableRoutes = {
  "GET /api/tables": route({ summary: "Reference tables of this book", reply: z.object({ tables: z.array(tableSummary) }) }),
  "GET /api/tables/{tableId}": route({ summary: "A reference table whole", params: tableParams, reply: referenceTable }),
  "POST /api/tables": route({
    summary: "Bring in a table from CSV text; all or nothing, with a report by row",
    body: z.object({ csv: z.string().max(50_000_000), tableId: tableId, title: z.string().min(1).max(200), keep: z.boolean() }),
    reply: tableReport,
  }),
  "GET /api/tables/{tableId}/csv": route({
    summary: "A table as CSV text in the documented layout",
    params: tableParams,
    reply: z.object({ csv: z.string() }),
  }),
  "DELETE /api/tables/{tableId}": route({
    summary: "Remove a table that no plant uses",
    params: tableParams,
    reply: z.object({ edit: editSummary }),
  }),
  "GET /api/starter-tables": route({
    summary: "Tables that come with Stipule and can be taken into this book",
    reply: z.object({ tables: z.array(z.object({ key: z.string(), title: z.string(), notice: z.string(), inBook: z.boolean() })) }),
  }),
  "POST /api/starter-tables/{key}": route({
    summary: "Take a table that comes with Stipule into this book",
    params: z.object({ key: z.string() }),
    reply: z.object({ edit: editSummary, table: tableSummary }),
  }),
} as const;
