/**
 * Sorts the photographs of the demo year as its invented teacher did, so that the front page has them on plants: view by
 * view from the demo's own file, camera shifted as the walks suggest, placed by the stops. The last outing is left as it
 * came, so that a newcomer has a tray to sort and a clock to set.
 */
import type { DemoPhoto, Outing, Photo } from "../engine/index.js";
import { placePhotos } from "../engine/index.js";
import type { BookStore } from "../store/index.js";
import { say } from "../words/index.js";
import { applyClockShift, proposeClockShifts } from "./place-photos.js";

/** A store whose edits undo passes over: the demo as it is laid down is where undo ends. */
const withoutUndo = (store: BookStore): BookStore => ({
  ...store,
  edit: (what, change) => store.edit({ ...what, undoable: false }, change),
});

export interface DemoSorting {
  /** False: it was sorted before, or the shift cannot be found yet. */
  readonly sorted: boolean;
  readonly placed: number;
}

const lastOf = (outings: readonly Outing[]): Outing | undefined => outings.toSorted((a, b) => (a.date < b.date ? 1 : -1))[0];

/** What the teacher wrote of a sheet. The plant is written by hand where the clock does not find it. */
const sortedPhoto = (photo: Photo, demo: DemoPhoto, placed: { outingId: string; plantId: string } | undefined): Photo => {
  const said: Photo = { ...photo, viewId: demo.view, stageId: demo.stage };
  if (demo.plant === null || (placed?.plantId === demo.plant && placed.outingId === demo.visit)) return said;
  return { ...said, outingId: demo.visit as Photo["outingId"], plantId: demo.plant as Photo["plantId"], placedBy: "hand" };
};

/**
 * Sorts all outings but the last. Sorting once more changes nothing: an outing whose camera was looked at is left alone. A
 * kill between the two edits is made good by the next call, since the outings are marked by the second.
 */
export const sortDemoPhotos = async (store: BookStore, demoPhotos: readonly DemoPhoto[]): Promise<DemoSorting> => {
  const [outings, stops, photos] = await Promise.all([store.list("outing"), store.list("stop"), store.list("photo")]);
  const last = lastOf(outings);
  const open = outings.filter((outing) => outing.id !== last?.id && outing.cameraShiftS === null);
  const proposals = await proposeClockShifts(store);
  const proposal = proposals.find((one) => one.trustworthy && one.outingIds.some((id) => open.some((outing) => outing.id === id)));
  if (open.length === 0 || proposal === undefined) return { sorted: false, placed: 0 };
  const { shiftS } = proposal;
  const walks = open.map((outing) => ({
    outingId: outing.id,
    date: outing.date,
    shiftS,
    stops: stops.filter((stop) => stop.outingId === outing.id),
  }));
  const placements = new Map(
    placePhotos(
      photos.map((photo) => ({ id: photo.id, taken: photo.takenCamera })),
      walks,
    ).map((placement) => [placement.photoId, placement]),
  );
  const byName = new Map(demoPhotos.filter((demo) => demo.copyOf === undefined).map((demo) => [demo.file, demo]));
  const isOpen = new Set<string>(open.map((outing) => outing.id));
  const quiet = withoutUndo(store);
  await quiet.edit({ label: say("edit.demo-sort") }, async (edit) => {
    for (const photo of photos) {
      const demo = byName.get(photo.fileName);
      if (demo === undefined || !isOpen.has(demo.visit) || photo.placedBy === "hand") continue;
      const placement = placements.get(photo.id);
      await edit.put("photo", sortedPhoto(photo, demo, placement?.sure === true ? placement : undefined));
    }
  });
  const { placed } = await applyClockShift(quiet, { outingIds: open.map((outing) => outing.id), shiftS });
  return { sorted: true, placed };
};
