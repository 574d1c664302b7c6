import { expect, it } from "vitest";
import { missingViews, stageOfPhoto } from "./missing-views.js";

const views = [
  { id: "habit", stages: [] },
  { id: "flower_side", stages: ["S4", "S5"] },
  { id: "base", stages: ["S0"] },
] as never[];
const records = [
  { plantId: "P1", outingId: "O1", stageId: "S4", answer: "yes" },
  { plantId: "P1", outingId: "O2", stageId: "S5", answer: "no" },
  { plantId: "P2", outingId: "O1", stageId: "S0", answer: "yes" },
  { plantId: "P2", outingId: "O3", stageId: null, answer: "not-looked" },
] as never[];
const sheet = (over: object): never =>
  ({ plantId: "P1", outingId: "O1", stageId: null, viewId: "habit", leaveOut: null, ...over }) as never;

it("lists what is wanted at each recorded stage and not there", () => {
  expect(missingViews({ views, records, photos: [] })).toEqual([
    { plantId: "P1", stageId: "S4", photographed: [], missing: ["habit", "flower_side"] },
    { plantId: "P2", stageId: "S0", photographed: [], missing: ["habit", "base"] },
  ]);
});

it("counts a photograph at its own stage or at that of its outing, and none that is left out", () => {
  const photos = [
    sheet({}),
    sheet({ stageId: "S4", outingId: null, viewId: "flower_side" }),
    sheet({ plantId: "P2", viewId: "base", leaveOut: "scale behind the flower" }),
    sheet({ plantId: null }),
    sheet({ plantId: "P2", stageId: "S7", viewId: "base" }),
  ];
  const [p1, p2] = missingViews({ views, records, photos });
  expect(p1).toMatchObject({ missing: [], photographed: ["habit", "flower_side"] });
  expect(p2).toMatchObject({ missing: ["habit", "base"] });
});

it("reads the stage of a photograph from the record of its outing", () => {
  expect(stageOfPhoto(sheet({}), records)).toBe("S4");
  expect(stageOfPhoto(sheet({ stageId: "S6" }), records)).toBe("S6");
  expect(stageOfPhoto(sheet({ outingId: "O2" }), records)).toBeNull();
});
