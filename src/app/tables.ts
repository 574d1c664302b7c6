/** Reference tables of a book, and the ones that come with Stipule. */
import type { ReferenceTable, TableId } from "../engine/index.js";
import type { EditSummary, TableSummary } from "../store/index.js";
import { say } from "../words/index.js";
import { NotInBook, notInBook, Refused } from "./app-error.js";
import { newestEdit } from "./write-record.js";
import type { Workbench } from "./workbench.js";

export const summaryOf = (table: ReferenceTable): TableSummary => ({
  id: table.id,
  title: table.title,
  notice: table.notice,
  taxonCount: table.taxa.length,
  characterCount: table.characters.length,
  scoreCount: table.scores.length,
});

/** @throws {NotInBook} */
export const getTable = async (workbench: Workbench, id: TableId): Promise<ReferenceTable> => {
  const table = await workbench.store.table(id);
  if (table === undefined) throw notInBook("table", id);
  return table;
};

/** Takes a table in, replacing one of the same id. */
export const keepTable = async (workbench: Workbench, table: ReferenceTable): Promise<EditSummary> => {
  await workbench.store.edit({ label: say("edit.table", { title: table.title }) }, (edit) => edit.putTable(table));
  return newestEdit(workbench);
};

/** @throws {NotInBook}, {Refused} `table-in-use` with the plants that use it. */
export const removeTable = async (workbench: Workbench, id: TableId): Promise<EditSummary> => {
  const table = await getTable(workbench, id);
  const users = (await workbench.store.list("plant")).filter((plant) => plant.tableId === id);
  if (users.length > 0) {
    const detail = say("refused.table-in-use", { title: table.title, plants: users.map((plant) => plant.nick).join(", ") });
    throw new Refused({ code: "table-in-use", detail, kept: say("refused.kept") });
  }
  await workbench.store.edit({ label: say("edit.table-remove", { title: table.title }) }, (edit) => edit.removeTable(id));
  return newestEdit(workbench);
};

/** A table that comes with Stipule, read only when it is asked for. */
export interface StarterTable {
  readonly key: string;
  readonly title: string;
  readonly notice: string;
  readonly read: () => Promise<ReferenceTable>;
}

/** @throws {NotInBook} when no such table comes with Stipule; what it has is in the message. */
export const takeStarterTable = async (
  workbench: Workbench,
  starters: readonly StarterTable[],
  key: string,
): Promise<{ edit: EditSummary; table: TableSummary }> => {
  const starter = starters.find((one) => one.key === key);
  if (starter === undefined)
    throw new NotInBook("table", key, say("refused.starter", { key, has: starters.map((one) => one.key).join(", ") }));
  const table = await starter.read();
  return { edit: await keepTable(workbench, table), table: summaryOf(table) };
};
