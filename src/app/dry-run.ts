/** A workbench whose edits are looked at and thrown away: what would be done, without doing it. */
import type { Edit, EditSummary } from "../store/index.js";
import type { Workbench } from "./workbench.js";

export interface DryRun {
  readonly workbench: Workbench;
  /** What the edits would have been, in order. */
  readonly edits: () => readonly EditSummary[];
}

/** Reads come from the real book. A use case that reads back what it has just written sees the book as it was. */
export const dryRun = (workbench: Workbench): DryRun => {
  const edits: EditSummary[] = [];
  const { store } = workbench;
  const rehearsed: Workbench["store"] = {
    folder: store.folder,
    files: store.files,
    opening: store.opening,
    info: () => store.info(),
    list: (kind) => store.list(kind),
    count: (kind, empty) => store.count(kind, empty),
    get: (kind, id) => store.get(kind, id),
    tables: () => store.tables(),
    table: (id) => store.table(id),
    content: () => store.content(),
    damaged: () => store.damaged(),
    backupTo: (path) => store.backupTo(path),
    putContent: async (_content, { label, by = "", undoable = true }) => {
      edits.push({ id: 0, at: "", label, by, rowCount: 0, state: "done", undoable });
    },
    proof: (progress, signal) => store.proof(progress, signal),
    close: () => store.close(),
    history: async (limit) => [...edits.toReversed(), ...(await store.history(limit))].slice(0, limit),
    undo: async () => (await store.history(500)).find((edit) => edit.state === "done" && edit.undoable) ?? null,
    redo: async () => (await store.history(500)).findLast((edit) => edit.state === "undone") ?? null,
    edit: async ({ label, by = "", undoable = true }, change) => {
      let rowCount = 0;
      const count = async (): Promise<void> => {
        rowCount += 1;
      };
      const edit: Edit = {
        get: (kind, id) => store.get(kind, id),
        list: (kind) => store.list(kind),
        put: count,
        remove: count,
        putInfo: count,
        putTable: count,
        removeTable: count,
      };
      const result = await change(edit);
      edits.push({ id: 0, at: "", label, by, rowCount, state: "done", undoable });
      return result;
    },
  };
  return { workbench: { ...workbench, store: rehearsed }, edits: () => edits };
};
