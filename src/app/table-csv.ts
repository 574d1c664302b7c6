/** Reference tables as CSV text: taken in all or nothing, given out in the same layout. */
import type { TableReport } from "../contract/index.js";
import type { TableId } from "../engine/index.js";
import { readTableCsv, writeTableCsv } from "../engine/index.js";
import { getTable, keepTable, summaryOf } from "./tables.js";
import type { Workbench } from "./workbench.js";

/**
 * Reads a table from CSV text and, with `keep`, takes it into the book. Nothing is taken in while there is a problem; the
 * report names each by row and column. A table the text gives no stages takes the book's.
 */
export const takeTableCsv = async (
  workbench: Workbench,
  of: { readonly csv: string; readonly tableId: TableId; readonly title: string; readonly keep: boolean },
): Promise<TableReport> => {
  const stages = [...(await workbench.store.list("stage"))];
  const { table, problems, remarks } = readTableCsv(of.csv, { id: of.tableId, title: of.title, stages });
  const report = { problems: [...problems], remarks: [...remarks] };
  if (table === null) return { accepted: false, table: null, ...report, edit: null };
  return { accepted: true, table: summaryOf(table), ...report, edit: of.keep ? await keepTable(workbench, table) : null };
};

/** @throws {NotInBook} */
export const tableCsv = async (workbench: Workbench, tableId: TableId): Promise<string> =>
  writeTableCsv(await getTable(workbench, tableId));
