/** Keeps or removes one record as one edit. Sending the same record twice keeps one and makes one edit. */
import { isDeepStrictEqual } from "node:util";
import type { BookInfo, Outing } from "../engine/index.js";
import { secondsOf, shiftTime } from "../engine/index.js";
import type { Edit, EditSummary, RecordKind, RecordOf } from "../store/index.js";
import { say } from "../words/index.js";
import type { FieldFault } from "./app-error.js";
import { notInBook, Refused } from "./app-error.js";
import { checkInfo, checkRecord } from "./record-checks.js";
import type { WrittenKind } from "./record-checks.js";
import type { Workbench } from "./workbench.js";

const kindWord = (kind: RecordKind): string => say(`kind.${kind}`);

/** What a person calls the record. */
const nameOf = (record: object): string => {
  for (const key of ["nick", "name", "number", "initials", "goal", "characterId", "id"] as const) {
    const value: unknown = (record as Readonly<Record<string, unknown>>)[key];
    if (typeof value === "string" && value !== "") return value;
  }
  return "";
};

/** The edit that was just made: the newest one that stands. */
export const newestEdit = async (workbench: Workbench): Promise<EditSummary> => {
  const [edit] = await workbench.store.history(1);
  if (edit === undefined) throw new RangeError("newestEdit requires an edit in the book's history: got none");
  return edit;
};

/** The reply where nothing had to be changed. It is not in the history and cannot be undone. */
export const nothingChanged: EditSummary = {
  id: 0,
  at: "",
  label: say("edit.nothing"),
  by: "",
  rowCount: 0,
  state: "done",
  undoable: false,
};

const refuse = (kind: string, errors: readonly FieldFault[]): void => {
  if (errors.length === 0) return;
  const detail = say("refused.record", { kind, count: errors.length, first: errors[0]?.detail ?? "" });
  throw new Refused({ code: "record-refused", detail, kept: say("refused.kept"), remedy: say("refused.remedy") }, errors);
};

/** An outing moved to another day takes the dates of its looks, readings and stages and the clock times of its stops along. */
const moveWithOuting = async (workbench: Workbench, edit: Edit, before: Outing, after: Outing): Promise<void> => {
  if (before.date === after.date) return;
  const { store } = workbench;
  const days = Math.round((Date.parse(after.date) - Date.parse(before.date)) / 86_400_000);
  for (const kind of ["look", "reading", "stageRecord"] as const)
    for (const record of await store.list(kind)) if (record.outingId === after.id) await edit.put(kind, { ...record, date: after.date });
  for (const stop of await store.list("stop"))
    if (stop.outingId === after.id && secondsOf(stop.from) > 0)
      await edit.put("stop", { ...stop, from: shiftTime(stop.from, days * 86_400), to: shiftTime(stop.to, days * 86_400) });
};

/**
 * Inserts or replaces a record after checking it against the book.
 * @throws {Refused} `id-differs` or `record-refused` with a fault a field; nothing is kept then.
 */
export const writeRecord = async <K extends WrittenKind>(
  workbench: Workbench,
  kind: K,
  id: string,
  record: RecordOf[K],
  by = "",
): Promise<EditSummary> => {
  const { store } = workbench;
  if (record.id !== id)
    throw new Refused({ code: "id-differs", detail: say("refused.id", { path: id, id: record.id }), remedy: say("refused.remedy") }, [
      { pointer: "/id", value: record.id, detail: say("refused.id", { path: id, id: record.id }) },
    ]);
  const before = await store.get(kind, id);
  if (before !== undefined && isDeepStrictEqual(before, record)) return nothingChanged;
  refuse(kindWord(kind), await checkRecord(store, kind, record));
  const label = say(before === undefined ? "edit.keep" : "edit.change", { kind: kindWord(kind), name: nameOf(record) });
  await store.edit({ label, by }, async (edit) => {
    await edit.put(kind, record);
    if (kind === "outing" && before !== undefined) await moveWithOuting(workbench, edit, before as Outing, record as Outing);
  });
  return newestEdit(workbench);
};

/**
 * Removes a record as one edit.
 * @throws {NotInBook} when there is none; the store's `record-in-use` when something still refers to it.
 */
export const removeRecord = async (workbench: Workbench, kind: RecordKind, id: string, by = ""): Promise<EditSummary> => {
  const record = await workbench.store.get(kind, id);
  if (record === undefined) throw notInBook(kind, id);
  await workbench.store.edit({ label: say("edit.remove", { kind: kindWord(kind), name: nameOf(record) }), by }, (edit) =>
    edit.remove(kind, id),
  );
  return newestEdit(workbench);
};

/** Changes what is said of the book itself. @throws {Refused} when its zone is unknown. */
export const writeInfo = async (workbench: Workbench, info: BookInfo): Promise<void> => {
  refuse(say("kind.book"), checkInfo(info));
  if (isDeepStrictEqual(await workbench.store.info(), info)) return;
  await workbench.store.edit({ label: say("edit.info") }, (edit) => edit.putInfo(info));
};
