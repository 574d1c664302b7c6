/** The clock of the demo's camera: found from the walks, and the photographs that land on their plants by it. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { clockShift, placePhotos, shiftTime } from "../../src/engine/index.js";
import type { LocalTime, Walk } from "../../src/engine/index.js";

interface Demo {
  visits: { id: string; date: string; stops: { plant: string; from: LocalTime; to: LocalTime }[] }[];
  photos: { id: string; visit: string; plant?: string | null; takenCamera: LocalTime; takenTrue: LocalTime }[];
}
const demo = JSON.parse(readFileSync(new URL("../../demo/hobbin-carr.json", import.meta.url), "utf8")) as Demo;
const stops = demo.visits.flatMap((visit) => visit.stops);

const walksWith = (shiftS: (visit: string) => number): Walk[] =>
  demo.visits.map((visit) => ({
    outingId: visit.id,
    date: visit.date,
    shiftS: shiftS(visit.id),
    stops: visit.stops.map((stop, index) => ({ id: `${visit.id}-${index}`, plantId: stop.plant, from: stop.from, to: stop.to })),
  })) as unknown as Walk[];

/** Share of the photographs that have a plant and land on it. */
const shareRight = (walks: Walk[]): { right: number; of: number; wrong: number } => {
  const withPlant = demo.photos.filter((photo) => typeof photo.plant === "string");
  const placed = placePhotos(withPlant.map((photo) => ({ id: photo.id, taken: photo.takenCamera })) as never, walks);
  const right = placed.filter((place, index) => place.sure && (place.plantId as string) === withPlant[index]?.plant).length;
  const wrong = placed.filter((place, index) => place.sure && (place.plantId as string) !== withPlant[index]?.plant).length;
  return { right, of: withPlant.length, wrong };
};

describe("clockShift on a year of outings", () => {
  const whole = clockShift(
    demo.photos.map((photo) => photo.takenCamera),
    stops,
  );

  it("finds the year's constant shift from all outings together", () => {
    expect(whole.doubt).toBeNull();
    // The truth is 440 s; the run of good shifts is some 50 s wide, and its middle is near.
    expect(Math.abs(whole.proposedS! - 440)).toBeLessThan(15);
    expect(whole.insideAfter).toBeGreaterThan(whole.insideBefore);
  });

  it("puts at least 95 % of the photographs on the right plant by the shift it proposes", () => {
    const { right, of } = shareRight(walksWith(() => whole.proposedS!));
    expect(right / of).toBeGreaterThanOrEqual(0.95);
    expect({ right, of, proposed: whole.proposedS }).toEqual({ right: 197, of: 197, proposed: 433 });
  });

  it("does not trust one evenly photographed outing alone, though its best shift is right", () => {
    for (const visit of demo.visits) {
      const alone = clockShift(
        demo.photos.filter((photo) => photo.visit === visit.id).map((photo) => photo.takenCamera),
        visit.stops,
      );
      // A photograph every few minutes: one step further only one falls out, so another shift does nearly as well.
      expect(alone).toMatchObject({ proposedS: null, doubt: "several-shifts-fit" });
      expect(alone.rival!.inside).toBe(alone.insideAfter - 1);
      expect(Math.abs((alone.equallyGood!.fromS + alone.equallyGood!.toS) / 2 - 440)).toBeLessThan(35);
    }
  });

  it.each([-86_000, -3600, -95, 0, 5, 3600, 7200, 100_000])("finds a further constant shift of %i s", (extra) => {
    const moved = demo.photos.map((photo) => shiftTime(photo.takenTrue, extra));
    const found = clockShift(moved, stops);
    expect(Math.abs(found.proposedS! + extra)).toBeLessThan(15);
    expect(shareRight(walksWith(() => found.proposedS! + extra + 440)).right).toBeGreaterThanOrEqual(187);
  });
});
