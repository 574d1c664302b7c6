import { readFileSync } from "node:fs";
import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ExifReader from "exifreader";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { renderPlate } from "../../media/index.js";
import { demoPhotoFolder } from "./demo-photo-folder.js";
import { demoPhotoSource, parametersOfPlant, planDemoPhotos } from "./demo-photo-plan.js";
import { demoPhotoEdition, drawDemoPhotos } from "./draw-demo-photos.js";
import type { DemoPhotoFolder, DemoPhotoTruth } from "./draw-demo-photos.js";

const demo = JSON.parse(readFileSync(new URL("../../../demo/hobbin-carr.json", import.meta.url), "utf8")) as unknown;
const source = demoPhotoSource.parse(demo);
const record = (file: string) => source.photos.find((p) => p.file === file)!;

function folderInMemory(): DemoPhotoFolder & { readonly files: Map<string, Uint8Array> } {
  const files = new Map<string, Uint8Array>();
  return {
    files,
    list: () => Promise.resolve([...files.keys()]),
    read: (name) => Promise.resolve(files.get(name) ?? new Uint8Array()),
    write: (name, bytes) => Promise.resolve(void files.set(name, bytes)),
  };
}

/** Middles of the dark strokes met on the way, pixels from its start. */
async function strokesAlong(path: string, truth: DemoPhotoTruth, share: number): Promise<number[]> {
  const { data, info } = await sharp(path, { autoOrient: true }).greyscale().raw().toBuffer({ resolveWithObject: true });
  const { fromPx, toPx, cornersPx } = truth.card!;
  const length = Math.hypot(toPx[0] - fromPx[0], toPx[1] - fromPx[1]);
  const along = [(toPx[0] - fromPx[0]) / length, (toPx[1] - fromPx[1]) / length] as const;
  const [upper, lower] = [cornersPx[0]!, cornersPx[3]!];
  const height = Math.hypot(lower[0] - upper[0], lower[1] - upper[1]);
  const down = [(lower[0] - upper[0]) / height, (lower[1] - upper[1]) / height] as const;
  const inside = length * 0.02;
  const before = length * 0.01;
  const out: number[] = [];
  let run: number[] = [];
  for (let s = -before; s <= length * share + before; s += 0.25) {
    const x = fromPx[0] + along[0] * s + down[0] * inside;
    const y = fromPx[1] + along[1] * s + down[1] * inside;
    const value = data[Math.round(y) * info.width + Math.round(x)] ?? 255;
    if (value < 128) run.push(s);
    else if (run.length > 0) {
      out.push(run.reduce((a, b) => a + b, 0) / run.length);
      run = [];
    }
  }
  return out;
}

/** Slope of the least-squares line of the strokes against their number. */
function spacing(strokes: readonly number[]): number {
  const n = strokes.length;
  const mi = (n - 1) / 2;
  const ms = strokes.reduce((a, b) => a + b, 0) / n;
  return strokes.reduce((sum, s, i) => sum + (i - mi) * (s - ms), 0) / strokes.reduce((sum, _, i) => sum + (i - mi) ** 2, 0);
}

describe("the demo's photographs, rendered", () => {
  const lying = "HBC_4116.jpg";
  const files = ["HBC_4240.jpg", "HBC_4293.jpg", "HBC_4292.jpg", "HBC_4132.jpg", lying];
  let path = "";
  let truths: DemoPhotoTruth[] = [];
  beforeAll(async () => {
    path = await mkdtemp(join(tmpdir(), "demo-photos-"));
    const lyingIndex = source.photos.findIndex((p, i) => i % 9 === 4 && p.view === "leaf_top");
    files[4] = source.photos[lyingIndex]!.file;
    await drawDemoPhotos({ demo, folder: await demoPhotoFolder(path), render: renderPlate, only: files });
    truths = JSON.parse(await readFile(join(path, "truth.json"), "utf8")) as DemoPhotoTruth[];
  }, 120_000);
  afterAll(() => rm(path, { recursive: true, force: true }));
  const truth = (file: string) => truths.find((t) => t.file === file)!;

  it("carry the camera's time, make and place, and the lying one its orientation", async () => {
    const plan = planDemoPhotos(source);
    for (const file of files) {
      const tags = ExifReader.load(await readFile(join(path, file)), { expanded: true });
      const from = file === "HBC_4293.jpg" ? record("HBC_4240.jpg") : record(file);
      expect(tags.exif?.DateTimeOriginal?.description).toBe(from.takenCamera.replaceAll("-", ":").replace("T", " "));
      expect(tags.exif?.OffsetTimeOriginal).toBeUndefined();
      expect(tags.exif?.Make?.description).toBe("Invented");
      const spot = source.place.spots.find((s) => s.id === source.plants.find((p) => p.id === from.plant)?.spot)!;
      expect(Math.abs(tags.gps!.Latitude! - spot.lat) * 111_320).toBeLessThan(10);
      expect(Math.abs(tags.gps!.Longitude! - spot.lon) * 65_000).toBeLessThan(10);
      const stored = await sharp(join(path, file)).metadata();
      const upright = from.view === "habit";
      const planned = plan.find((p) => p.file === from.file);
      const orientation = planned?.kind === "plate" ? planned.orientation : undefined;
      expect(tags.exif?.Orientation?.value).toBe(orientation);
      if (file === files[4]) expect([6, 8]).toContain(orientation);
      if (orientation !== 1) {
        expect([stored.width, stored.height]).toEqual([1800, 2400]);
      } else {
        expect([stored.width, stored.height]).toEqual(upright ? [1800, 2400] : [2400, 1800]);
      }
    }
    const numbered = plan.filter((p) => p.kind === "plate" && p.bodySerial !== undefined);
    expect(numbered.length).toBeGreaterThan(20);
    const one = files.find((f) => plan.some((p) => p.file === f && p.kind === "plate" && p.bodySerial !== undefined));
    if (one !== undefined)
      expect(ExifReader.load(await readFile(join(path, one)), { expanded: true }).exif).toMatchObject({
        BodySerialNumber: { description: "INV-0007741" },
      });
  });

  it("copy byte for byte, and leave no half files", async () => {
    expect(Buffer.compare(await readFile(join(path, "HBC_4293.jpg")), await readFile(join(path, "HBC_4240.jpg")))).toBe(0);
    expect((await readdir(path)).toSorted()).toEqual([...files, "truth.json"].toSorted());
    for (const file of files) expect((await readFile(join(path, file))).length).toBeLessThan(1_200_000);
  });

  it("show a scale that measures the truth within one per cent", async () => {
    for (const file of ["HBC_4132.jpg", files[4]!]) {
      const t = truth(file);
      const strokes = await strokesAlong(join(path, file), t, 1);
      expect(strokes.length).toBe(Math.round(t.card!.ruleMm / t.card!.strokeEveryMm) + 1);
      const measured = spacing(strokes) / t.card!.strokeEveryMm;
      expect(Math.abs(measured / t.pxPerMm - 1)).toBeLessThan(0.01);
    }
  });

  it("show the bad scale about 28 per cent too small", async () => {
    const t = truth("HBC_4292.jpg");
    const strokes = await strokesAlong(join(path, "HBC_4292.jpg"), t, 0.2);
    expect(strokes.length).toBeGreaterThan(3);
    const readsTooLong = t.pxPerMm / (spacing(strokes) / t.card!.strokeEveryMm);
    expect(Math.abs(readsTooLong / t.cardReadsTooLong! - 1)).toBeLessThan(0.01);
    expect(readsTooLong).toBeGreaterThan(1.27);
    expect(readsTooLong).toBeLessThan(1.3);
  });

  it("keep the truth in the picture: pixels divided by pixels to the millimetre give the length", () => {
    const t = truth("HBC_4292.jpg");
    const petals = t.organs.filter((o) => o.what === "petal length");
    expect(petals).toHaveLength(4);
    for (const o of petals) {
      expect(Math.hypot(o.toPx[0] - o.fromPx[0], o.toPx[1] - o.fromPx[1]) / t.pxPerMm).toBeCloseTo(o.lengthMm, 6);
      expect(o.toPx[0]).toBeGreaterThan(0);
      expect(o.toPx[0]).toBeLessThan(2400);
    }
  });
});

describe("making the demo's photographs", () => {
  const render = () => Promise.resolve(new Uint8Array([1, 2, 3]));
  const few = ["HBC_4132.jpg", "HBC_4295.jpg", "HBC_4104.jpg", "HBC_4103.jpg"];

  it("stops when told, keeps what is done, and makes only the rest next time", async () => {
    const folder = folderInMemory();
    const stop = new AbortController();
    const first = await drawDemoPhotos({
      demo,
      folder,
      render,
      only: few,
      atOnce: 1,
      signal: stop.signal,
      progress: ({ done }) => done === 2 && stop.abort(),
    });
    expect(first).toMatchObject({ stopped: true, kept: [] });
    expect(first.made).toHaveLength(2);
    let calls = 0;
    const second = await drawDemoPhotos({ demo, folder, render: () => ((calls += 1), render()), only: few });
    expect(calls).toBe(2);
    expect(second.made.toSorted()).toEqual(few.filter((f) => !first.made.includes(f)).toSorted());
    expect(second.kept.toSorted()).toEqual([...first.made].toSorted());
    expect((JSON.parse(new TextDecoder().decode(folder.files.get("truth.json"))) as unknown[]).length).toBe(few.length);
  });

  it("asks for the same picture each time", async () => {
    const asked: string[] = [];
    for (let i = 0; i < 2; i += 1)
      await drawDemoPhotos({
        demo,
        folder: folderInMemory(),
        render: (picture) => (asked.push(JSON.stringify(picture)), render()),
        only: ["HBC_4132.jpg"],
      });
    expect(asked[0] === asked[1]).toBe(true);
    expect(demoPhotoEdition(demo)).toMatch(/^[0-9a-f]{12}$/);
  });

  it("draws a plant by its own readings, without those left out", () => {
    const ditch = parametersOfPlant(source, "P1", "obscurum");
    expect(ditch.capsule).toBeGreaterThan(40);
    expect(ditch.flower.petal).toBeLessThan(6);
    expect(parametersOfPlant(source, "P5", "obscurum+ciliatum").flower.petal).toBeGreaterThan(6);
  });

  it("covers every photo record of the demo", () => {
    const plan = planDemoPhotos(source);
    expect(plan).toHaveLength(199);
    expect(plan.filter((p) => p.kind === "copy")).toEqual([{ kind: "copy", file: "HBC_4293.jpg", of: "HBC_4240.jpg" }]);
  });
});
