/**
 * The camera's clock against the walks of the book: proposes a shift where one can be trusted, and applies one as a single
 * edit that can be undone. What a person placed by hand is never moved.
 */
import type { ClockProposal } from "../contract/index.js";
import { clockShift, countInside, maxShiftS, placePhotos, secondsOf, stageOfPhoto } from "../engine/index.js";
import type { ClockShift, LocalTime, Outing, OutingId, Photo, StageRecord, Stop, Walk } from "../engine/index.js";
import type { BookStore, EditSummary } from "../store/index.js";
import { say } from "../words/index.js";
import { notInBook } from "./app-error.js";
import { nothingChanged } from "./write-record.js";

/** An outing with its stops and the photographs that may be of it, by the camera's clock. */
interface Walked {
  readonly outing: Outing;
  readonly stops: readonly Stop[];
  readonly times: readonly LocalTime[];
}

/**
 * The shifts that the walks suggest. First all outings are taken together, since a camera that is not set keeps its shift
 * for months and one evenly photographed walk alone fits several shifts. An outing that the common shift does not fit as
 * well as its own is looked at alone. Outings that go by the same shift make one proposal.
 *
 * Outings whose shift was settled before are not proposed again. A proposal that cannot be trusted has a shift of 0 and says why.
 */
export const proposeClockShifts = async (store: BookStore): Promise<readonly ClockProposal[]> => {
  const [outings, stops, photos] = await Promise.all([store.list("outing"), store.list("stop"), store.list("photo")]);
  const walks = walksOf(outings, stops, photos);
  const common = clockShift(
    walks.flatMap((walk) => walk.times),
    walks.flatMap((walk) => walk.stops),
  );
  const byShift = new Map<
    string,
    { readonly shiftS: number; readonly trustworthy: boolean; readonly doubt: ClockShift["doubt"]; readonly walks: Walked[] }
  >();
  for (const walk of walks) {
    if (walk.outing.cameraShiftS !== null) continue;
    const own = clockShift(walk.times, walk.stops);
    const fitsCommon =
      common.proposedS !== null &&
      countInside(walk.times, walk.stops, common.proposedS) >= own.insideAfter - Math.max(1, Math.floor(0.05 * own.insideAfter));
    const shiftS = fitsCommon ? common.proposedS : own.proposedS;
    const doubt = shiftS === null ? own.doubt : null;
    const key = shiftS === null ? `doubt ${walk.outing.id}` : `shift ${shiftS}`;
    const group = byShift.get(key) ?? { shiftS: shiftS ?? 0, trustworthy: shiftS !== null, doubt, walks: [] };
    group.walks.push(walk);
    byShift.set(key, group);
  }
  return [...byShift.values()].map(({ shiftS, trustworthy, doubt, walks: group }) => {
    const count = (by: number): number => group.reduce((sum, walk) => sum + countInside(walk.times, walk.stops, by), 0);
    const photoCount = group.reduce((sum, walk) => sum + walk.times.length, 0);
    const [before, after] = [count(0), count(shiftS)];
    const way = shiftS === 0 ? "clock.right" : shiftS > 0 ? "clock.behind" : "clock.ahead";
    return {
      outingIds: group.map((walk) => walk.outing.id),
      dates: group.map((walk) => walk.outing.date),
      shiftS,
      photoCount,
      onStopsBefore: before,
      onStopsAfter: after,
      sentence: doubt === null ? say(way, { time: durationText(shiftS), before, after, of: photoCount }) : say(`clock.doubt.${doubt}`),
      trustworthy,
    };
  });
};

/**
 * Sets the camera's shift of outings and places their photographs by it: one edit, one undo. A photograph inside a stop gets
 * outing, plant and the stage recorded for that plant at that outing; one between stops gets the outing alone, and is "not
 * sure". Photographs placed by hand are left alone, and so are those that belong to none of these outings.
 *
 * @throws {NotInBook} when an outing is not there.
 */
export const applyClockShift = async (
  store: BookStore,
  of: { readonly outingIds: readonly OutingId[]; readonly shiftS: number; readonly by?: string },
): Promise<{ edit: EditSummary; placed: number; notSure: number }> => {
  let placed = 0;
  let notSure = 0;
  let changes = 0;
  // Read within the edit, so that nothing said in between is overwritten.
  await store.edit({ label: say("edit.place", { seconds: of.shiftS }), by: of.by ?? "" }, async (edit) => {
    const outings = await edit.list("outing");
    const stops = await edit.list("stop");
    const records = await edit.list("stageRecord");
    const movable = (await edit.list("photo")).filter((photo) => photo.placedBy !== "hand");
    const ids = new Set<string>(of.outingIds);
    const walks: Walk[] = [];
    for (const id of ids) {
      const outing = outings.find((one) => one.id === id);
      if (outing === undefined) throw notInBook("outing", id);
      walks.push({ outingId: outing.id, date: outing.date, shiftS: of.shiftS, stops: stops.filter((stop) => stop.outingId === id) });
      if (outing.cameraShiftS === of.shiftS) continue;
      await edit.put("outing", { ...outing, cameraShiftS: of.shiftS });
      changes += 1;
    }
    const placements = placePhotos(
      movable.map((photo) => ({ id: photo.id, taken: photo.takenCamera })),
      walks,
    );
    for (const [index, photo] of movable.entries()) {
      const placement = placements[index];
      if (placement === undefined) continue;
      // Another walk, of the same day perhaps, has it at one of its stops: "between the stops" of this one takes nothing away.
      if (!placement.sure && photo.plantId !== null && photo.outingId !== null && !ids.has(photo.outingId)) continue;
      if (placement.sure) placed += 1;
      else if (placement.outingId !== null) notSure += 1;
      else if (photo.outingId === null || !ids.has(photo.outingId)) continue;
      const next = placedPhoto(photo, placement.outingId, placement.sure ? placement.plantId : null, records);
      if (isSamePlace(photo, next)) continue;
      await edit.put("photo", next);
      changes += 1;
    }
  });
  if (changes === 0) return { edit: nothingChanged, placed, notSure };
  const [edit] = await store.history(1);
  return { edit: edit ?? nothingChanged, placed, notSure };
};

/** "7 min 20 s"; the sign is said by the sentence around it. */
const durationText = (seconds: number): string => {
  const whole = Math.abs(seconds);
  const [h, min, s] = [Math.floor(whole / 3600), Math.floor((whole % 3600) / 60), whole % 60];
  return h > 0 ? say("clock.hours", { h, min, s }) : min > 0 ? say("clock.minutes", { min, s }) : say("clock.seconds", { s });
};

/** Each photograph with a time, at the outing whose walk is nearest to it, within reach of a shift. */
const walksOf = (outings: readonly Outing[], stops: readonly Stop[], photos: readonly Photo[]): readonly Walked[] => {
  const walks = outings
    .map((outing) => {
      const own = stops.filter((stop) => stop.outingId === outing.id);
      const from = Math.min(...own.map((stop) => secondsOf(stop.from)));
      const to = Math.max(...own.map((stop) => secondsOf(stop.to)));
      return { outing, stops: own, times: [] as LocalTime[], from, to };
    })
    .filter((walk) => walk.stops.length > 0);
  for (const { takenCamera, leaveOut } of photos) {
    if (takenCamera === null || leaveOut !== null) continue;
    const at = secondsOf(takenCamera);
    let nearest: (typeof walks)[number] | null = null;
    let away = maxShiftS;
    for (const walk of walks) {
      const distance = Math.max(walk.from - at, at - walk.to, 0);
      if (distance < away) [nearest, away] = [walk, distance];
    }
    nearest?.times.push(takenCamera);
  }
  return walks.filter((walk) => walk.times.length > 0);
};

const placedPhoto = (photo: Photo, outingId: OutingId | null, plantId: Photo["plantId"], records: readonly StageRecord[]): Photo => {
  if (outingId === null) return { ...photo, outingId: null, plantId: null, placedBy: "nobody", stageId: null };
  const stays = photo.outingId === outingId && photo.plantId === plantId;
  // A stage somebody chose at this plant stays; at another plant it says nothing.
  const stageId = plantId === null ? null : stageOfPhoto({ outingId, plantId, stageId: stays ? photo.stageId : null }, records);
  return { ...photo, outingId, plantId, placedBy: "clock", stageId };
};

const isSamePlace = (a: Photo, b: Photo): boolean =>
  a.outingId === b.outingId && a.plantId === b.plantId && a.placedBy === b.placedBy && a.stageId === b.stageId;
