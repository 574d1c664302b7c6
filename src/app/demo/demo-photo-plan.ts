/** What each photograph of the demo book shows, as plates to draw: read from the demo file, pure. */
import { composePlate, crossOf, drawDog, drawFigure, figureParameters, figureViews, seededRandom } from "../../engine/index.js";
import type { FigureParameters, FigureView, GroundKind, Plate } from "../../engine/index.js";
import { z } from "zod";

const stage = z.enum(["S0", "S1", "S2", "S3", "S4", "S5", "S6", "S7", "S8"]);

/** The parts of the demo file that the photographs need. */
export const demoPhotoSource = z.object({
  place: z.object({
    altitudeM: z.tuple([z.number(), z.number()]),
    spots: z.array(
      z.object({ id: z.string(), setting: z.enum(["ditch", "woodland", "open", "fen", "mountain"]), lat: z.number(), lon: z.number() }),
    ),
  }),
  plants: z.array(z.object({ id: z.string(), nick: z.string(), spot: z.string() })),
  measurements: z.array(
    z.object({ plant: z.string(), character: z.string(), values: z.array(z.number()), leaveOut: z.string().optional() }),
  ),
  figures: z.record(z.string(), figureParameters),
  photos: z.array(
    z.object({
      id: z.string(),
      file: z.string().regex(/^[A-Za-z0-9_-]+\.jpg$/, "a photo's file is a plain name ending in .jpg"),
      visit: z.string(),
      plant: z.string().nullable(),
      stage: stage.nullable(),
      view: z.string().nullable(),
      scale: z.boolean(),
      takenCamera: z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d$/, "camera time is local: YYYY-MM-DDTHH:MM:SS"),
      copyOf: z.string().optional(),
      draw: z.object({ figure: z.string(), taxon: z.string().nullable() }),
    }),
  ),
});
export type DemoPhotoSource = z.infer<typeof demoPhotoSource>;
type DemoPhotoRecord = DemoPhotoSource["photos"][number];

/** One photograph to make: an exact copy of another, or a plate with its camera facts. */
export type PlannedPhoto =
  | { readonly kind: "copy"; readonly file: string; readonly of: string }
  | {
      readonly kind: "plate";
      readonly file: string;
      readonly id: string;
      readonly compose: () => Plate;
      readonly widthPx: number;
      readonly heightPx: number;
      readonly outOfFocusPx: number;
      readonly orientation: 1 | 6 | 8;
      readonly takenAt: string;
      readonly bodySerial?: string;
      readonly gps?: { readonly lat: number; readonly lon: number; readonly altitudeM: number };
      /** How many times too long lengths read by the card, when the card lies in another plane. */
      readonly cardReadsTooLong?: number;
    };

/** Distance of the camera from the flower and of the card behind it, and the card's tilt, in the photo with the bad scale. */
const badScale = { cameraMm: 120, behindMm: 25, tiltDegrees: 20 };

/** Plans all photographs, in the order of the file. */
export function planDemoPhotos(source: DemoPhotoSource): readonly PlannedPhoto[] {
  return source.photos.map((photo, index) => planPhoto(source, photo, index));
}

function planPhoto(source: DemoPhotoSource, photo: DemoPhotoRecord, index: number): PlannedPhoto {
  if (photo.copyOf !== undefined) return { kind: "copy", file: photo.file, of: photo.copyOf };
  const random = seededRandom(`camera|${photo.id}`);
  const plant = source.plants.find((p) => p.id === photo.plant);
  const spot = source.place.spots.find((s) => s.id === plant?.spot) ?? source.place.spots[0];
  const view = figureViews.find((v) => v === photo.draw.figure);
  const upright = view === "habit";
  const widthPx = upright ? 1800 : 2400;
  const heightPx = upright ? 2400 : 1800;
  const bad = photo.id.endsWith("bad-scale");
  const compose = (): Plate => {
    const base = { widthPx, heightPx, seed: photo.id, note: "invented - not for identification" };
    if (view === undefined || photo.draw.taxon === null)
      return composePlate({ ...base, figure: { drawing: drawDog(photo.id), truths: [] }, ground: "moss", scale: "none" });
    const figure = drawFigure({
      view,
      parameters: parametersOfPlant(source, photo.plant ?? "", photo.draw.taxon),
      stage: photo.stage ?? "S5",
      seed: photo.id,
      ...(spot === undefined ? {} : { setting: spot.setting }),
      lines: [photo.plant ?? "", plant?.nick ?? ""],
      filled: photo.draw.taxon.includes("+") ? 0.15 : 1,
    });
    const cos = Math.cos((badScale.tiltDegrees * Math.PI) / 180);
    const far = badScale.cameraMm / (badScale.cameraMm + badScale.behindMm);
    return composePlate({
      ...base,
      figure,
      ground: groundFor(view, spot?.setting ?? "open", random.between(0, 1)),
      scale: photo.scale ? (view === "habit" ? "staff" : "card") : "none",
      ...(bad ? { cardFactor: { along: far * cos, across: far } } : {}),
      ...(view === "place" || view === "stigma" ? { fill: true } : {}),
      ...(["habit", "base", "winter", "place", "leaf_top", "capsule_green"].includes(view) && plant !== undefined
        ? { label: [plant.id, photo.visit] }
        : {}),
    });
  };
  const metres = { north: random.bell() * 3, east: random.bell() * 3 };
  return {
    kind: "plate",
    file: photo.file,
    id: photo.id,
    compose,
    widthPx,
    heightPx,
    outOfFocusPx: photo.id.includes("blur") ? 16 : 0,
    orientation: index % 9 === 4 ? (index % 2 === 0 ? 6 : 8) : 1,
    takenAt: photo.takenCamera,
    ...(index % 4 === 1 ? { bodySerial: "INV-0007741" } : {}),
    ...(spot === undefined
      ? {}
      : {
          gps: {
            // One degree of latitude is about 111 320 m; of longitude, that times the cosine of the latitude.
            lat: spot.lat + metres.north / 111_320,
            lon: spot.lon + metres.east / (111_320 * Math.cos((spot.lat * Math.PI) / 180)),
            altitudeM: Math.round(random.between(source.place.altitudeM[0], source.place.altitudeM[1])),
          },
        }),
    ...(bad
      ? { cardReadsTooLong: (badScale.cameraMm + badScale.behindMm) / badScale.cameraMm / Math.cos((badScale.tiltDegrees * Math.PI) / 180) }
      : {}),
  };
}

function groundFor(view: FigureView, setting: string, dice: number): GroundKind {
  switch (view) {
    case "place":
      return "whole";
    case "habit":
      return "sky";
    case "base":
    case "winter":
      return setting === "fen" ? "moss" : dice < 0.5 ? "litter" : "soil";
    case "stem_cut":
    case "seed":
    case "stigma":
    case "leaf_under":
    case "capsule_open":
      return view === "capsule_open" && dice < 0.7 ? "soil" : "card";
    case "leaf_top":
    case "capsule_green":
      return dice < 0.45 ? "hand" : dice < 0.75 ? "card" : "litter";
    default:
      return dice < 0.3 ? "hand" : dice < 0.6 ? "moss" : dice < 0.8 ? "soil" : "litter";
  }
}

/**
 * The parameters of one plant: those of its taxon (a cross for "a+b"), with the medians of the plant's own readings where it
 * has any, so that photographs and readings agree. Readings that were left out do not count.
 */
export function parametersOfPlant(source: DemoPhotoSource, plant: string, taxon: string): FigureParameters {
  const [first, second] = taxon.split("+").map((id) => source.figures[id]);
  if (first === undefined) throw new RangeError(`parametersOfPlant requires a taxon with figures: got ${taxon}`);
  const base = second === undefined ? first : crossOf(first, second);
  const median = (character: string, fallback: number, factor = 1): number => {
    const values = source.measurements
      .filter((m) => m.plant === plant && m.character === character && m.leaveOut === undefined)
      .flatMap((m) => m.values)
      .toSorted((a, b) => a - b);
    const mid = values[Math.floor(values.length / 2)];
    return mid === undefined ? fallback : mid * factor;
  };
  return {
    ...base,
    stemMm: median("height", base.stemMm, 10),
    leaf: {
      ...base.leaf,
      len: median("leaf_len", base.leaf.len),
      wid: median("leaf_wid", base.leaf.wid),
      stalk: median("stalk_len", base.leaf.stalk),
    },
    flower: { ...base.flower, petal: median("petal_len", base.flower.petal), sepal: median("sepal_len", base.flower.sepal) },
    capsule: median("capsule_len", base.capsule),
    seed: { ...base.seed, len: median("seed_len", base.seed.len) },
  };
}
