import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import sharp from "sharp";
import type { Sharp } from "sharp";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { exifTag, lyingTiff, manyPages, smallJpeg, withExif, zeroPng } from "../../tests/support/odd-photos.js";
import { openPhotoWorkers } from "./photo-workers.js";
import type { PhotoWorkers } from "./photo-workers.js";

let folder: string;
let workers: PhotoWorkers;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "stipule-media-"));
  workers = openPhotoWorkers({ threads: 2 });
});
afterAll(async () => {
  await workers.close();
  rmSync(folder, { recursive: true, force: true });
});
const put = (name: string, bytes: Uint8Array): string => {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
};
const readBytes = (name: string, bytes: Uint8Array) => workers.read(put(name, bytes));
const heic = readFileSync(new URL("../../tests/fixtures/photos/gps-north-east.heic", import.meta.url));

describe("derivatives", () => {
  it("have 320 and 2048 pixels on the longest side, are JPEG, sRGB, and carry nothing of the original", async () => {
    const large = await sharp({ create: { width: 3000, height: 1500, channels: 3, background: "#3a6" } })
      .withIccProfile("p3")
      .jpeg()
      .toBuffer();
    const tagged = withExif(large, { ifd0: { [exifTag.make]: "Maker" }, exif: { [exifTag.dateTimeOriginal]: "2022:07:27 10:00:00" } });
    const read = await readBytes("large.jpg", tagged);
    expect(read).toMatchObject({ ok: true, value: { format: "jpeg", widthPx: 3000, heightPx: 1500, metadata: { camera: "Maker" } } });
    if (!read.ok) return;
    expect(read.value.derivatives.map(({ size, widthPx, heightPx }) => [size, widthPx, heightPx])).toEqual([
      [320, 320, 160],
      [2048, 2048, 1024],
    ]);
    for (const { jpeg } of read.value.derivatives) {
      const metadata = await sharp(jpeg).metadata();
      expect(metadata).toMatchObject({ format: "jpeg", space: "srgb" });
      expect([metadata.exif, metadata.icc, metadata.xmp, metadata.iptc, metadata.orientation]).toEqual([
        undefined,
        undefined,
        undefined,
        undefined,
        undefined,
      ]);
    }
  });

  it("never enlarge, put white behind what is transparent, and take 16 bits and grey", async () => {
    const clear = await sharp({ create: { width: 50, height: 20, channels: 4, background: { r: 255, g: 0, b: 0, alpha: 0 } } })
      .png()
      .toBuffer();
    const read = await readBytes("clear.png", clear);
    if (!read.ok) throw new Error(read.problem.code);
    expect(read.value.derivatives.map(({ widthPx, heightPx }) => [widthPx, heightPx])).toEqual([
      [50, 20],
      [50, 20],
    ]);
    const { data } = await sharp(read.value.derivatives[0]!.jpeg).raw().toBuffer({ resolveWithObject: true });
    expect([...data.subarray(0, 3)]).toEqual([255, 255, 255]);
    const grey = await sharp(await smallJpeg(2))
      .toColourspace("grey16")
      .png()
      .toBuffer();
    expect(await readBytes("grey.png", grey)).toMatchObject({ ok: true });
  });

  it("are upright for all eight orientations", async () => {
    // Red above, blue below, as it should be seen; stored turned so that each orientation value puts it right again.
    const upright = await sharp({ create: { width: 40, height: 60, channels: 3, background: "#0000ff" } })
      .composite([{ input: { create: { width: 40, height: 30, channels: 3, background: "#ff0000" } }, top: 0, left: 0 }])
      .png()
      .toBuffer();
    const stored: Record<number, Sharp> = {
      1: sharp(upright),
      2: sharp(upright).flop(),
      3: sharp(upright).rotate(180),
      4: sharp(upright).flip(),
      5: sharp(await sharp(upright).rotate(90).toBuffer()).flop(),
      6: sharp(upright).rotate(270),
      7: sharp(await sharp(upright).rotate(270).toBuffer()).flop(),
      8: sharp(upright).rotate(90),
    };
    for (const [value, image] of Object.entries(stored)) {
      const jpeg = withExif(await image.jpeg({ quality: 95 }).toBuffer(), { ifd0: { [exifTag.orientation]: Number(value) } });
      const read = await readBytes(`o${value}.jpg`, jpeg);
      if (!read.ok) throw new Error(read.problem.code);
      expect([value, read.value.widthPx, read.value.heightPx, read.value.orientation]).toEqual([value, 40, 60, Number(value)]);
      const { data, info } = await sharp(read.value.derivatives[0]!.jpeg).raw().toBuffer({ resolveWithObject: true });
      const at = (x: number, y: number): number[] => [...data.subarray((y * info.width + x) * 3, (y * info.width + x) * 3 + 3)];
      expect(at(20, 5)[0]).toBeGreaterThan(200);
      expect(at(20, 55)[2]).toBeGreaterThan(200);
    }
  });

  it("are made from HEIC", async () => {
    const read = await readBytes("a.heic", heic);
    expect(read).toMatchObject({
      ok: true,
      value: { format: "heic", widthPx: 96, heightPx: 128, metadata: { lat: 47.5622222, takenCamera: "2024-06-02T10:00:00" } },
    });
  });
});

describe("a refusal names what is wrong", () => {
  const refused = async (name: string, bytes: Uint8Array) => {
    const read = await readBytes(name, bytes);
    if (read.ok) throw new Error(`${name} was read`);
    return read.problem;
  };

  it("before decoding, when there are too many pixels", async () => {
    expect(await refused("big.png", zeroPng(30_000, 30_000))).toEqual({
      code: "too-many-pixels",
      values: { width: "30000", height: "30000", pages: 1, megapixels: 268, side: "65535" },
    });
    expect((await refused("claims.png", zeroPng(100_000, 4, 10))).code).toBe("too-many-pixels");
    expect((await refused("bomb.tiff", await lyingTiff(60_000))).code).toBe("too-many-pixels");
  });

  it("when it is cut short, empty, text, or another picture", async () => {
    const jpeg = await smallJpeg(3, 400, 300);
    expect((await refused("half.jpg", jpeg.subarray(0, jpeg.length / 2))).code).toBe("cut-short");
    expect((await refused("head.jpg", jpeg.subarray(0, 40))).code).toBe("cut-short");
    expect((await refused("short.png", zeroPng(1000, 1000, 2000))).code).toBe("cut-short");
    const webp = await sharp(jpeg).webp().toBuffer();
    expect((await refused("half.webp", webp.subarray(0, webp.length / 2))).code).toBe("cut-short");
    expect((await refused("half.heic", heic.subarray(0, 1500))).code).toBe("cut-short");
    expect(await refused("empty.jpg", new Uint8Array())).toEqual({ code: "empty", values: {} });
    expect(await refused("letter.jpg", Buffer.from("Dear Thea"))).toEqual({ code: "not-a-photograph", values: { found: "text" } });
    expect(await refused("a.jpg", await sharp(jpeg).gif().toBuffer())).toEqual({ code: "format-not-read", values: { found: "gif" } });
  });

  it("and what swells when unpacked or has many pages does no harm", async () => {
    expect(await readBytes("swells.png", zeroPng(100, 100, 50_000_000))).toMatchObject({ ok: true, value: { widthPx: 100 } });
    expect(await readBytes("pages.tiff", await manyPages("tiff", 30))).toMatchObject({
      ok: true,
      value: { widthPx: 32, heightPx: 32, pageCount: 30 },
    });
    expect(await readBytes("frames.webp", await manyPages("webp", 12))).toMatchObject({ ok: true, value: { widthPx: 32, heightPx: 32 } });
  });
});

describe("the pool", () => {
  it("reads by content whatever the name, many at once", async () => {
    const jpeg = await smallJpeg(4);
    const all = await Promise.all(Array.from({ length: 20 }, (_, k) => readBytes(`n${k}.png`, jpeg)));
    expect(all.every((read) => read.ok && read.value.format === "jpeg")).toBe(true);
  });

  it("takes back what has not begun when the signal is aborted", async () => {
    const path = put("x.jpg", await smallJpeg(5));
    const abort = new AbortController();
    const some = Array.from({ length: 8 }, () => workers.read(path, { signal: abort.signal }));
    abort.abort(new Error("enough"));
    const results = await Promise.allSettled(some);
    expect(results.some((result) => result.status === "rejected")).toBe(true);
    for (const result of results) if (result.status === "rejected") expect((result.reason as Error).message).toBe("enough");
    expect(await workers.read(path)).toMatchObject({ ok: true });
  });

  it("gives up what takes too long and goes on", async () => {
    const hasty = openPhotoWorkers({ threads: 1, timeoutMs: 1 });
    try {
      expect(await hasty.read(put("slow.png", zeroPng(12_000, 12_000)))).toMatchObject({ ok: false, problem: { code: "took-too-long" } });
    } finally {
      await hasty.close();
    }
  });

  it("throws when the file is not there", async () => {
    await expect(workers.read(join(folder, "none.jpg"))).rejects.toThrow(/ENOENT/);
  });
});
