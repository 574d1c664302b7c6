/**
 * Which views of a plant are wanted at the stages recorded for it and have not been photographed yet. Pure and quick
 * enough to run at every key press while photographs are sorted.
 */
import type { PlantId, StageId, ViewId } from "../base/ids.js";
import type { Photo, StageRecord } from "../characters/followed-plant.js";
import type { View } from "../characters/vocabulary.js";

/** The views of one plant at one recorded stage. */
export interface StageViews {
  readonly plantId: PlantId;
  readonly stageId: StageId;
  /** Wanted and there, in the order of the views. */
  readonly photographed: readonly ViewId[];
  /** Wanted and not there, in the order of the views. */
  readonly missing: readonly ViewId[];
}

/**
 * The stage a photograph belongs to: its own when one is set, else the stage answered "yes" for its plant at its outing
 * (the last one when several were); null when neither is known.
 */
export const stageOfPhoto = (
  photo: Pick<Photo, "plantId" | "outingId" | "stageId">,
  records: readonly Pick<StageRecord, "plantId" | "outingId" | "stageId" | "answer">[],
): StageId | null =>
  photo.stageId ??
  records.findLast(
    (record) =>
      record.answer === "yes" && record.stageId !== null && record.plantId === photo.plantId && record.outingId === photo.outingId,
  )?.stageId ??
  null;

/**
 * Views wanted at the recorded stages and not yet photographed, by plant and stage, in the order in which the stages were
 * recorded. A view without stages is wanted whenever the plant stands. Photographs that are left out do not count; stages
 * answered "no" or not looked at want nothing.
 */
export const missingViews = (of: {
  readonly views: readonly Pick<View, "id" | "stages">[];
  readonly records: readonly Pick<StageRecord, "plantId" | "outingId" | "stageId" | "answer">[];
  readonly photos: readonly Pick<Photo, "plantId" | "outingId" | "stageId" | "viewId" | "leaveOut">[];
}): readonly StageViews[] => {
  const key = (plantId: string, stageId: string): string => `${plantId} ${stageId}`;
  const stageAtOuting = new Map<string, StageId>();
  const places = new Map<string, { plantId: PlantId; stageId: StageId }>();
  for (const record of of.records) {
    if (record.answer !== "yes" || record.stageId === null) continue;
    stageAtOuting.set(key(record.plantId, record.outingId), record.stageId);
    const place = key(record.plantId, record.stageId);
    if (!places.has(place)) places.set(place, { plantId: record.plantId, stageId: record.stageId });
  }
  const seen = new Map<string, Set<ViewId>>();
  for (const photo of of.photos) {
    if (photo.plantId === null || photo.viewId === null || photo.leaveOut !== null) continue;
    const stageId = photo.stageId ?? (photo.outingId === null ? undefined : stageAtOuting.get(key(photo.plantId, photo.outingId)));
    if (stageId === undefined) continue;
    const place = key(photo.plantId, stageId);
    const views = seen.get(place) ?? new Set<ViewId>();
    views.add(photo.viewId);
    seen.set(place, views);
  }
  return [...places.entries()].map(([place, { plantId, stageId }]) => {
    const wanted = of.views.filter((view) => view.stages.length === 0 || view.stages.includes(stageId)).map((view) => view.id);
    const there = seen.get(place);
    return {
      plantId,
      stageId,
      photographed: wanted.filter((id) => there?.has(id) === true),
      missing: wanted.filter((id) => there?.has(id) !== true),
    };
  });
};
