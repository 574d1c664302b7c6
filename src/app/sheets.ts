/** The sheets of the sorting trays: rows for ten thousand at once, and one change said of many. */
import type { SheetChange, SheetRow } from "../contract/index.js";
import type { LocalTime, Outing, Photo, PhotoId } from "../engine/index.js";
import { dateOf, shiftTime } from "../engine/index.js";
import type { EditSummary } from "../store/index.js";
import { say } from "../words/index.js";
import type { FieldFault } from "./app-error.js";
import { notInBook, Refused } from "./app-error.js";
import { stageIsKnown } from "./record-checks.js";
import { newestEdit, nothingChanged } from "./write-record.js";
import type { Workbench } from "./workbench.js";

/** The outing in whose day a photograph falls by that outing's own shift of the clock; of several of one day the first. */
const outingOfDay = (outings: readonly Outing[], takenCamera: LocalTime): Outing | undefined =>
  outings.find((outing) => dateOf(shiftTime(takenCamera, outing.cameraShiftS ?? 0)) === outing.date);

/** Finds the outing whose clock a photograph goes by: its own, else the one of the same day. */
const clockOf = (outings: readonly Outing[]): ((photo: Photo) => number) => {
  const byId = new Map<string, Outing>(outings.map((outing) => [outing.id, outing]));
  const byTime = new Map<LocalTime, Outing | undefined>();
  return ({ outingId, takenCamera }) => {
    if (outingId !== null) return byId.get(outingId)?.cameraShiftS ?? 0;
    if (takenCamera === null) return 0;
    if (!byTime.has(takenCamera)) byTime.set(takenCamera, outingOfDay(outings, takenCamera));
    return byTime.get(takenCamera)?.cameraShiftS ?? 0;
  };
};

const rowOf = (photo: Photo, shiftS: number): SheetRow => ({
  id: photo.id,
  fileName: photo.fileName,
  taken: photo.takenCamera === null ? null : shiftTime(photo.takenCamera, shiftS),
  outingId: photo.outingId,
  plantId: photo.plantId,
  placedBy: photo.placedBy,
  stageId: photo.stageId,
  viewId: photo.viewId,
  part: photo.part,
  widthPx: photo.widthPx,
  heightPx: photo.heightPx,
  leftOut: photo.leaveOut !== null,
  hasAlt: photo.altText !== "",
});

/** By time, those without one last; then by file name, then by id, so that the order never depends on the store. */
const byTime = (a: SheetRow, b: SheetRow): number => {
  const [x, y] = [a.taken ?? "9999", b.taken ?? "9999"];
  if (x !== y) return x < y ? -1 : 1;
  if (a.fileName !== b.fileName) return a.fileName < b.fileName ? -1 : 1;
  return a.id < b.id ? -1 : 1;
};

const rowsOf = (photos: readonly Photo[], outings: readonly Outing[]): SheetRow[] => {
  const shift = clockOf(outings);
  return photos.map((photo) => rowOf(photo, shift(photo))).toSorted(byTime);
};

/** All sheets, by time. */
export const listSheets = async (workbench: Workbench): Promise<SheetRow[]> => {
  const [photos, outings] = await Promise.all([workbench.store.list("photo"), workbench.store.list("outing")]);
  return rowsOf(photos, outings);
};

/** @throws {NotInBook} */
export const getSheet = async (workbench: Workbench, id: PhotoId): Promise<Photo> => {
  const photo = await workbench.store.get("photo", id);
  if (photo === undefined) throw notInBook("photo", id);
  return photo;
};

const checkChange = async (workbench: Workbench, change: SheetChange): Promise<readonly FieldFault[]> => {
  const { store } = workbench;
  const faults: FieldFault[] = [];
  const missing = (pointer: string, kind: "plant" | "outing" | "stage" | "view", id: string): void => {
    faults.push({ pointer, value: id, detail: say("refused.unknown", { kind: say(`kind.${kind}`), id }) });
  };
  const { plantId, outingId, viewId, stageId } = change;
  if (plantId && (await store.get("plant", plantId)) === undefined) missing("/change/plantId", "plant", plantId);
  if (outingId && (await store.get("outing", outingId)) === undefined) missing("/change/outingId", "outing", outingId);
  if (viewId && (await store.get("view", viewId)) === undefined) missing("/change/viewId", "view", viewId);
  if (stageId && !(await stageIsKnown(store, stageId))) missing("/change/stageId", "stage", stageId);
  return faults;
};

/** One photograph after a change; the same object when nothing differs. */
export const changedPhoto = (photo: Photo, change: SheetChange): Photo => {
  const given = Object.entries(change).filter(([, value]) => value !== undefined);
  const next = { ...photo, ...(Object.fromEntries(given) as Partial<Photo>) };
  // Saying where it belongs, even "nowhere", is a hand's doing; the clock does not place it again.
  if ("plantId" in change || "outingId" in change) next.placedBy = "hand";
  return given.every(([key]) => photo[key as keyof Photo] === next[key as keyof Photo]) && photo.placedBy === next.placedBy ? photo : next;
};

const refuseUnknown = (wanted: ReadonlySet<string>, found: readonly Photo[]): never => {
  const has = new Set<string>(found.map((photo) => photo.id));
  const lost = [...wanted].filter((id) => !has.has(id));
  throw new Refused(
    { code: "sheets-unknown", detail: say("refused.sheets", { ids: lost.slice(0, 5).join(", ") }), kept: say("refused.kept") },
    lost.slice(0, 50).map((id) => ({ pointer: "/ids", value: id, detail: say("refused.unknown", { kind: say("kind.photo"), id }) })),
  );
};

/**
 * Says one thing of many sheets: one edit, one undo. A plant given without an outing puts a sheet without one into the
 * outing of its day.
 * @throws {Refused} `sheets-unknown` or `change-refused`; nothing is changed then.
 */
export const changeSheets = async (
  workbench: Workbench,
  ids: readonly PhotoId[],
  change: SheetChange,
): Promise<{ edit: EditSummary; sheets: SheetRow[] }> => {
  const { store } = workbench;
  const faults = await checkChange(workbench, change);
  if (faults.length > 0)
    throw new Refused(
      { code: "change-refused", detail: faults[0]?.detail ?? "", kept: say("refused.kept"), remedy: say("refused.remedy") },
      faults,
    );
  const wanted = new Set<string>(ids);
  // Read within the edit, so that what another page said of the same sheets meanwhile is not overwritten.
  const { after, outings, count } = await store.edit({ label: say("edit.sheets", { count: wanted.size }) }, async (edit) => {
    const chosen: Photo[] = [];
    for (const id of wanted) {
      const photo = await edit.get("photo", id);
      if (photo !== undefined) chosen.push(photo);
    }
    if (chosen.length < wanted.size) refuseUnknown(wanted, chosen);
    const walks = await edit.list("outing");
    const changed = chosen.map((photo) => {
      const next = changedPhoto(photo, change);
      if (!change.plantId || next.outingId !== null || next.takenCamera === null) return next;
      return { ...next, outingId: outingOfDay(walks, next.takenCamera)?.id ?? null };
    });
    const differing = changed.filter((photo, i) => photo !== chosen[i]);
    for (const photo of differing) await edit.put("photo", photo);
    return { after: changed, outings: walks, count: differing.length };
  });
  return { edit: count === 0 ? nothingChanged : await newestEdit(workbench), sheets: rowsOf(after, outings) };
};
