/**
 * Which outing and which plant a photograph belongs to, by the clock: the camera's time, shifted to the phone's, meets
 * the stops of the walk. What lies between stops is "not sure" and left to a person; nothing is guessed.
 */
import { dateOf, secondsOf, shiftTime } from "../base/dates.js";
import type { IsoDate, LocalTime } from "../base/dates.js";
import type { OutingId, PhotoId, PlantId, StopId } from "../base/ids.js";

/** An outing as the clock sees it. */
export interface Walk {
  readonly outingId: OutingId;
  readonly date: IsoDate;
  /** Seconds to add to the camera's time. */
  readonly shiftS: number;
  readonly stops: readonly { readonly id: StopId; readonly plantId: PlantId; readonly from: LocalTime; readonly to: LocalTime }[];
}

/** Where a photograph was put, or why it was not. */
export type Placement =
  | { readonly photoId: PhotoId; readonly sure: true; readonly outingId: OutingId; readonly plantId: PlantId; readonly stopId: StopId }
  | {
      readonly photoId: PhotoId;
      readonly sure: false;
      /** The outing of that day; null when there was none. */
      readonly outingId: OutingId | null;
      readonly why: "no-time" | "no-outing" | "between-stops" | "several-plants";
      /** The plant whose stop is nearest in time, and how far, seconds; null when the outing has no stops. */
      readonly nearest: { readonly plantId: PlantId; readonly secondsAway: number } | null;
    };

/**
 * Places photographs by the clock. Both ends of a stop belong to it; a photograph in the stops of two plants at once is
 * "not sure". A photograph belongs to an outing when it lies in one of its stops or has its date after the shift.
 *
 * @returns One placement for each photograph, in the order given.
 */
export const placePhotos = (
  photos: readonly { readonly id: PhotoId; readonly taken: LocalTime | null }[],
  walks: readonly Walk[],
): readonly Placement[] => photos.map((photo) => placeOne(photo.id, photo.taken, walks));

const placeOne = (photoId: PhotoId, taken: LocalTime | null, walks: readonly Walk[]): Placement => {
  if (taken === null) return { photoId, sure: false, outingId: null, why: "no-time", nearest: null };
  const hits: { outingId: OutingId; plantId: PlantId; stopId: StopId }[] = [];
  let sameDay: Walk | null = null;
  for (const walk of walks) {
    const time = shiftTime(taken, walk.shiftS);
    if (dateOf(time) === walk.date) sameDay ??= walk;
    for (const stop of walk.stops) {
      // Local times are ISO text: they sort as time does.
      if (stop.from <= time && time <= stop.to) hits.push({ outingId: walk.outingId, plantId: stop.plantId, stopId: stop.id });
    }
  }
  const first = hits[0];
  if (first !== undefined && hits.every((hit) => hit.plantId === first.plantId && hit.outingId === first.outingId)) {
    return { photoId, sure: true, ...first };
  }
  if (first !== undefined) {
    const outingId = hits.every((hit) => hit.outingId === first.outingId) ? first.outingId : null;
    return { photoId, sure: false, outingId, why: "several-plants", nearest: { plantId: first.plantId, secondsAway: 0 } };
  }
  if (sameDay === null) return { photoId, sure: false, outingId: null, why: "no-outing", nearest: null };
  const at = secondsOf(shiftTime(taken, sameDay.shiftS));
  let nearest: { plantId: PlantId; secondsAway: number } | null = null;
  for (const stop of sameDay.stops) {
    const secondsAway = Math.max(secondsOf(stop.from) - at, at - secondsOf(stop.to));
    if (nearest === null || secondsAway < nearest.secondsAway) nearest = { plantId: stop.plantId, secondsAway };
  }
  return { photoId, sure: false, outingId: sameDay.outingId, why: "between-stops", nearest };
};
