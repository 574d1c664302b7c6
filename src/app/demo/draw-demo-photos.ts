/**
 * Makes the photographs of the demo book: draws every plate, has it rendered, writes it once. What is already in the folder
 * stays; what is missing is made; a stopped run loses nothing.
 */
import { createHash } from "node:crypto";
import { demoPhotoSource, planDemoPhotos } from "./demo-photo-plan.js";
import type { DemoPhotoSource, PlannedPhoto } from "./demo-photo-plan.js";
import type { Plate } from "../../engine/index.js";
import type { PlatePicture } from "../../media/index.js";

/** Raised when the look of the photographs changes, so that old ones are not taken for new. */
const drawingEdition = "2";
const jpegQuality = 84;

/** Where the photographs go. Names are plain file names. */
export interface DemoPhotoFolder {
  /** Names of the files that are there, whole. */
  readonly list: () => Promise<readonly string[]>;
  readonly read: (name: string) => Promise<Uint8Array>;
  /** Writes so that a file is there whole or not at all. */
  readonly write: (name: string, bytes: Uint8Array) => Promise<void>;
}

export interface DemoPhotoOptions {
  /** The demo file as read from JSON. */
  readonly demo: unknown;
  readonly folder: DemoPhotoFolder;
  readonly render: (picture: PlatePicture) => Promise<Uint8Array>;
  /** Told after each photo. */
  readonly progress?: (step: { readonly done: number; readonly total: number; readonly file: string; readonly made: boolean }) => void;
  readonly signal?: AbortSignal;
  /** Only these files; missing = all. */
  readonly only?: readonly string[];
  /** Photos rendered at once. */
  readonly atOnce?: number;
}

/** The true measures of one photograph, for tests of measuring. Pixels count in the picture as it is seen (turned upright). */
export interface DemoPhotoTruth {
  readonly file: string;
  readonly id: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pxPerMm: number;
  readonly organs: Plate["truths"];
  readonly card?: NonNullable<Plate["card"]>;
  readonly cardReadsTooLong?: number;
}

export interface DemoPhotosMade {
  readonly made: readonly string[];
  readonly kept: readonly string[];
  readonly stopped: boolean;
}

/** Short name of the edition of the photographs: changes with the demo file or with the drawing. */
export function demoPhotoEdition(demo: unknown): string {
  return createHash("sha256")
    .update(`${drawingEdition}|${JSON.stringify(demo)}`)
    .digest("hex")
    .slice(0, 12);
}

/**
 * Makes the missing photographs and `truth.json` beside them.
 * @throws {ZodError} if the demo file lacks what the photographs need
 */
export async function drawDemoPhotos(options: DemoPhotoOptions): Promise<DemoPhotosMade> {
  const source: DemoPhotoSource = demoPhotoSource.parse(options.demo);
  const wanted = new Set(options.only ?? source.photos.map((p) => p.file));
  const plan = planDemoPhotos(source).filter((p) => wanted.has(p.file));
  const there = new Set(await options.folder.list());
  const truths = await readTruths(options.folder, there);
  const made: string[] = [];
  const kept: string[] = [];
  let done = 0;
  const tell = (file: string, wasMade: boolean): void => {
    (wasMade ? made : kept).push(file);
    done += 1;
    options.progress?.({ done, total: plan.length, file, made: wasMade });
  };
  const stopped = (): boolean => options.signal?.aborted === true;

  const plates = plan.filter((p) => p.kind === "plate");
  const waiting = plates.values();
  const work = async (): Promise<void> => {
    for (const photo of waiting) {
      if (stopped()) return;
      const whole = there.has(photo.file);
      if (whole && truths.has(photo.file)) {
        tell(photo.file, false);
        continue;
      }
      const plate = photo.compose();
      if (!whole) await options.folder.write(photo.file, await options.render(pictureOf(photo, plate)));
      truths.set(photo.file, truthOf(photo, plate));
      tell(photo.file, !whole);
    }
  };
  await Promise.all(Array.from({ length: Math.max(1, options.atOnce ?? 2) }, work));
  for (const photo of plan) {
    if (photo.kind !== "copy" || stopped()) continue;
    if (!there.has(photo.file)) await options.folder.write(photo.file, await options.folder.read(photo.of));
    tell(photo.file, !there.has(photo.file));
  }
  const list = [...truths.values()].toSorted((a, b) => (a.file < b.file ? -1 : 1));
  await options.folder.write("truth.json", new TextEncoder().encode(`${JSON.stringify(list, null, 1)}\n`));
  return { made, kept, stopped: stopped() };
}

function pictureOf(photo: Extract<PlannedPhoto, { kind: "plate" }>, plate: Plate): PlatePicture {
  return {
    groundSvg: plate.groundSvg,
    subjectSvg: plate.subjectSvg,
    widthPx: photo.widthPx,
    heightPx: photo.heightPx,
    outOfFocusPx: photo.outOfFocusPx,
    grainSeed: Number.parseInt(createHash("sha256").update(photo.id).digest("hex").slice(0, 8), 16),
    quality: jpegQuality,
    orientation: photo.orientation,
    exif: {
      takenAt: photo.takenAt,
      make: "Invented",
      model: "Invented",
      ...(photo.bodySerial === undefined ? {} : { bodySerial: photo.bodySerial }),
      ...(photo.gps === undefined ? {} : { gps: photo.gps }),
    },
  };
}

function truthOf(photo: Extract<PlannedPhoto, { kind: "plate" }>, plate: Plate): DemoPhotoTruth {
  return {
    file: photo.file,
    id: photo.id,
    widthPx: photo.widthPx,
    heightPx: photo.heightPx,
    pxPerMm: plate.pxPerMm,
    organs: plate.truths,
    ...(plate.card === undefined ? {} : { card: plate.card }),
    ...(photo.cardReadsTooLong === undefined ? {} : { cardReadsTooLong: photo.cardReadsTooLong }),
  };
}

/** Truths of an earlier run; a file that cannot be read counts as absent, since every truth can be worked out again. */
async function readTruths(folder: DemoPhotoFolder, there: ReadonlySet<string>): Promise<Map<string, DemoPhotoTruth>> {
  if (!there.has("truth.json")) return new Map();
  try {
    const list = JSON.parse(new TextDecoder().decode(await folder.read("truth.json"))) as readonly DemoPhotoTruth[];
    return new Map(list.map((t) => [t.file, t]));
  } catch (cause) {
    if (cause instanceof SyntaxError) return new Map();
    throw cause;
  }
}
