import { readFileSync } from "node:fs";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { memoryStore } from "../../tests/support/memory-store.js";
import type { MemoryStore } from "../../tests/support/memory-store.js";
import { outing, photo, shiftTime, stageRecord, stop } from "../engine/index.js";
import type { LocalTime } from "../engine/index.js";
import { applyClockShift, proposeClockShifts } from "./place-photos.js";

interface Demo {
  visits: { id: string; date: string; stops: { plant: string; from: string; to: string }[] }[];
  photos: { id: string; visit: string; plant?: string | null; takenCamera: LocalTime }[];
  stagesSeen: { plant: string; visit: string; stage: string }[];
}
const demo = JSON.parse(readFileSync(new URL("../../demo/hobbin-carr.json", import.meta.url), "utf8")) as Demo;
const idOf = (index: number): string => index.toString(16).padStart(64, "0");

let store: MemoryStore;
beforeEach(() => {
  store = memoryStore();
});
afterEach(() => store.close());

/** The demo year's walks and photographs, none placed; `camera` turns a camera's time of a visit into another. */
const fill = async (
  camera: (time: LocalTime, visit: string) => LocalTime = (time) => time,
  visits = demo.visits.map((visit) => visit.id),
) =>
  await store.edit({ label: "fill" }, async (edit) => {
    for (const visit of demo.visits) {
      await edit.put("outing", outing.parse({ id: visit.id, date: visit.date }));
      for (const [k, at] of visit.stops.entries()) {
        await edit.put("stop", stop.parse({ id: `${visit.id}-${k}`, outingId: visit.id, plantId: at.plant, from: at.from, to: at.to }));
      }
    }
    for (const [k, seen] of demo.stagesSeen.entries()) {
      const date = demo.visits.find((visit) => visit.id === seen.visit)!.date;
      await edit.put(
        "stageRecord",
        stageRecord.parse({ id: `r${k}`, plantId: seen.plant, outingId: seen.visit, date, stageId: seen.stage, answer: "yes" }),
      );
    }
    for (const [k, sheet] of demo.photos.entries()) {
      if (!visits.includes(sheet.visit)) continue;
      const of = { id: idOf(k), fileName: sheet.id, format: "jpeg", bytes: 1, widthPx: 1, heightPx: 1, orientation: 1, broughtAt: "" };
      await edit.put("photo", photo.parse({ ...of, takenCamera: camera(sheet.takenCamera, sheet.visit) }));
    }
  });
const rightPlants = async () => {
  const photos = await store.list("photo");
  const withPlant = demo.photos
    .map((sheet, k) => ({ ...sheet, kept: photos.find((one) => one.id === idOf(k)) }))
    .filter((sheet) => typeof sheet.plant === "string" && sheet.kept);
  return {
    right: withPlant.filter((sheet) => sheet.kept!.plantId === sheet.plant && sheet.kept!.outingId === sheet.visit).length,
    of: withPlant.length,
  };
};

describe("the camera's clock of a year", () => {
  it("is proposed once for all outings, and applied puts every photograph on its plant", async () => {
    await fill();
    const proposals = await proposeClockShifts(store);
    expect(proposals).toHaveLength(1);
    expect(proposals[0]).toMatchObject({ shiftS: 433, trustworthy: true, photoCount: 199, onStopsBefore: 150, onStopsAfter: 198 });
    expect(proposals[0]!.outingIds).toHaveLength(9);
    expect(proposals[0]!.sentence).toBe(
      "The camera seems 7 min 13 s behind the phone: 198 of 199 photographs lie at a stop, instead of 150.",
    );
    const done = await applyClockShift(store, proposals[0]!);
    expect(done).toMatchObject({
      placed: 198,
      notSure: 1,
      edit: { label: "Shift the camera by 433 s and place by the stops", undoable: true },
    });
    const { right, of } = await rightPlants();
    expect({ right, of }).toEqual({ right: 197, of: 197 });
    for (const one of await store.list("photo")) {
      expect(one.placedBy).toBe("clock");
      if (one.plantId !== null) {
        expect(one.stageId).toBe(
          demo.stagesSeen.findLast((seen) => seen.plant === one.plantId && seen.visit === one.outingId)?.stage ?? null,
        );
      }
    }
    expect((await store.list("outing")).every((one) => one.cameraShiftS === 433)).toBe(true);
    expect(await store.history(9)).toHaveLength(2);
    // Nothing is proposed twice, and the same again changes nothing.
    expect(await proposeClockShifts(store)).toEqual([]);
    expect(await applyClockShift(store, proposals[0]!)).toMatchObject({ placed: 198, edit: { id: 0 } });
    expect(await store.history(9)).toHaveLength(2);
  });

  it("differs after the camera was set in between: the outings that do not fit keep to themselves", async () => {
    await fill((time, visit) => (visit === "V5" ? shiftTime(time, 440) : visit === "V6" ? shiftTime(time, -3600) : time));
    const proposals = await proposeClockShifts(store);
    const common = proposals.find((one) => one.outingIds.length > 1)!;
    expect(common.trustworthy).toBe(true);
    expect(common.outingIds).not.toContain("V6");
    const other = proposals.find((one) => one.outingIds.includes("V6" as never))!;
    expect(other.outingIds).toEqual(["V6"]);
    // One evenly photographed walk alone fits several shifts: nothing is claimed.
    expect(other).toMatchObject({ trustworthy: false, shiftS: 0 });
    expect(other.sentence).toMatch(/^Several shifts fit/);
  });

  it("is not proposed for one thin walk", async () => {
    await fill((time) => time, ["V9"]);
    expect(await proposeClockShifts(store)).toMatchObject([{ outingIds: ["V9"], trustworthy: false }]);
  });
});

describe("applyClockShift", () => {
  it("leaves alone what was placed by hand, and a stage somebody chose", async () => {
    await fill();
    const [byHand, staged] = [idOf(0), idOf(1)];
    await store.edit({ label: "by hand" }, async (edit) => {
      await edit.put("photo", { ...(await store.get("photo", byHand))!, plantId: "P6" as never, placedBy: "hand" });
    });
    await applyClockShift(store, { outingIds: ["V1" as never], shiftS: 440 });
    expect(await store.get("photo", byHand)).toMatchObject({ plantId: "P6", placedBy: "hand", outingId: null });
    await store.edit({ label: "stage" }, async (edit) => {
      await edit.put("photo", { ...(await store.get("photo", staged))!, stageId: "S8" as never });
    });
    await applyClockShift(store, { outingIds: ["V1" as never], shiftS: 441 });
    expect(await store.get("photo", staged)).toMatchObject({ plantId: "P1", placedBy: "clock", stageId: "S8" });
    expect(
      (await store.list("photo")).filter((one) => one.placedBy !== "nobody").every((one) => one.outingId === "V1" || one.id === byHand),
    ).toBe(true);
  });

  it("takes back its own placing when another shift says otherwise", async () => {
    await fill();
    await applyClockShift(store, { outingIds: ["V1" as never], shiftS: 440 });
    const shifted = await applyClockShift(store, { outingIds: ["V1" as never], shiftS: -80_000 });
    expect(shifted).toMatchObject({ placed: 0, notSure: 0 });
    expect((await store.list("photo")).every((one) => one.plantId === null && one.placedBy === "nobody")).toBe(true);
  });

  it("takes nothing from the stops of another walk of the same day", async () => {
    await store.edit({ label: "two walks" }, async (edit) => {
      for (const [id, hour] of [
        ["morning", "09"],
        ["evening", "18"],
      ] as const) {
        const at = { from: `2024-05-01T${hour}:00:00`, to: `2024-05-01T${hour}:30:00` };
        await edit.put("outing", outing.parse({ id, date: "2024-05-01" }));
        await edit.put("stop", stop.parse({ id: `stop-${id}`, outingId: id, plantId: "P1", ...at }));
      }
      const of = { fileName: "a", format: "jpeg", bytes: 1, widthPx: 1, heightPx: 1, orientation: 1, broughtAt: "" };
      await edit.put("photo", photo.parse({ ...of, id: idOf(0), takenCamera: "2024-05-01T09:10:00" }));
    });
    await applyClockShift(store, { outingIds: ["morning" as never], shiftS: 0 });
    await applyClockShift(store, { outingIds: ["evening" as never], shiftS: 60 });
    expect(await store.get("photo", idOf(0))).toMatchObject({ outingId: "morning", plantId: "P1", placedBy: "clock" });
  });

  it("says when an outing is not there", async () => {
    await expect(applyClockShift(store, { outingIds: ["V77" as never], shiftS: 1 })).rejects.toMatchObject({ code: "not-in-book" });
  });
});
