import { createHash } from "node:crypto";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { memoryStore } from "../../tests/support/memory-store.js";
import type { MemoryStore } from "../../tests/support/memory-store.js";
import { exifTag, smallJpeg, withExif, zeroPng } from "../../tests/support/odd-photos.js";
import type { BroughtFile } from "../contract/index.js";
import { openPhotoWorkers } from "../media/index.js";
import type { PhotoWorkers } from "../media/index.js";
import { bringFolder } from "./bring-folder.js";
import { bringPhotos } from "./bring-photos.js";
import type { BringEffects, PhotoSource } from "./bring-photos.js";
import { remakeDerivatives } from "./remake-derivatives.js";

let workers: PhotoWorkers;
let store: MemoryStore;
let folder: string;
beforeAll(() => {
  workers = openPhotoWorkers({ threads: 2 });
});
afterAll(() => workers.close());
beforeEach(() => {
  store = memoryStore();
  folder = mkdtempSync(join(tmpdir(), "stipule-bring-"));
});
afterEach(async () => {
  await store.close();
  rmSync(folder, { recursive: true, force: true });
});
const now = (): Date => new Date("2022-07-27T20:00:00Z");
const bring = (sources: Iterable<PhotoSource> | AsyncIterable<PhotoSource>, more: Partial<BringEffects> = {}) =>
  bringPhotos(sources, { store, workers, now, ...more });
const file = (name: string, bytes: Uint8Array): PhotoSource => ({ name, open: () => bytes });
const byName = (files: readonly BroughtFile[]): Record<string, string> =>
  Object.fromEntries(files.map((one) => [one.fileName, one.outcome === "refused" ? one.code : one.outcome]));
const sha = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

describe("bringPhotos", () => {
  it("keeps the bytes as they are, records what the file says, and makes the small copies", async () => {
    const bytes = withExif(await smallJpeg(1), {
      ifd0: { [exifTag.model]: "X 100", [exifTag.orientation]: 6 },
      exif: { [exifTag.dateTimeOriginal]: "2022:07:27 08:37:40", [exifTag.offsetTimeOriginal]: "+01:00" },
    });
    const report = await bring([file("HBC_4101.JPG", bytes)]);
    expect(report).toMatchObject({ fresh: 1, here: 0, refused: 0, cancelled: false });
    const [photo] = await store.list("photo");
    expect(photo).toMatchObject({
      id: sha(bytes),
      fileName: "HBC_4101.JPG",
      format: "jpeg",
      bytes: bytes.length,
      widthPx: 48,
      heightPx: 64,
      orientation: 6,
      takenCamera: "2022-07-27T08:37:40",
      takenOffset: "+01:00",
      camera: "X 100",
      metadataNote: "",
      broughtAt: "2022-07-27T20:00:00.000Z",
      placedBy: "nobody",
    });
    expect(readFileSync(store.files.originalPath(photo!.id)).equals(bytes)).toBe(true);
    expect([await store.files.hasDerivative(photo!.id, 320), await store.files.hasDerivative(photo!.id, 2048)]).toEqual([true, true]);
    expect((await store.history(5)).map((edit) => [edit.label, edit.undoable])).toEqual([["Bring one photograph", false]]);
  });

  it("refuses each bad file by what is wrong with it, keeps none of its bytes, and goes on", async () => {
    const good = await smallJpeg(2, 200, 150);
    const sources: PhotoSource[] = [
      file("cut.jpg", good.subarray(0, good.length / 2)),
      file("huge.png", zeroPng(30_000, 30_000)),
      file("empty.jpg", new Uint8Array()),
      { name: "empty stream.jpg", open: () => Readable.from([]) },
      file("letter.jpg", Buffer.from("Dear Thea, the capsules are long.")),
      {
        name: "gone.jpg",
        open: () => {
          throw new Error("ENOENT: no such file");
        },
      },
      {
        name: "bad card.jpg",
        open: () =>
          new Readable({
            read() {
              this.push(good.subarray(0, 500));
              this.destroy(new Error("EIO: the card failed"));
            },
          }),
      },
      file("good.jpg", good),
    ];
    const report = await bring(sources);
    expect(byName(report.files)).toEqual({
      "cut.jpg": "cut-short",
      "huge.png": "too-many-pixels",
      "empty.jpg": "empty",
      "empty stream.jpg": "empty",
      "letter.jpg": "not-a-photograph",
      "gone.jpg": "cannot-be-read",
      "bad card.jpg": "cannot-be-read",
      "good.jpg": "new",
    });
    const said = (name: string): string => report.files.find((one) => one.fileName === name)!.text;
    expect(said("huge.png")).toBe(
      "The picture is 30000 x 30000 pixels; at most 268 megapixels and 65535 a side are decoded. Save a smaller copy.",
    );
    expect(said("letter.jpg")).toBe("The file is not a photograph: its content is text.");
    expect(said("bad card.jpg")).toContain("EIO: the card failed");
    expect(await store.originals()).toEqual([sha(good)]);
    expect(await store.list("photo")).toHaveLength(1);
  });

  it("reads a wrong extension by content and says so; names times that cannot be", async () => {
    const jpeg = await smallJpeg(3);
    const impossible = withExif(jpeg, { exif: { [exifTag.dateTimeOriginal]: "2022:02:31 10:00:00" } });
    const future = withExif(jpeg, { exif: { [exifTag.dateTimeOriginal]: "2031:07:27 10:00:00" } });
    await bring([file("a.png", jpeg), file("b.jpg", impossible), file("c.jpg", future)]);
    const notes = Object.fromEntries((await store.list("photo")).map((photo) => [photo.fileName, [photo.takenCamera, photo.metadataNote]]));
    expect(notes).toEqual({
      "a.png": [null, "The file carries no metadata: no time and no place. The name says otherwise, but the content is JPEG."],
      "b.jpg": [null, "The time taken, “2022:02:31 10:00:00”, does not exist."],
      "c.jpg": ["2031-07-27T10:00:00", "The time taken, 2031-07-27 10:00:00, has not come yet: the camera’s clock is wrong."],
    });
  });

  it("keeps odd names as text and never as a path", async () => {
    const names = [
      "../../x.jpg",
      "/etc/passwd",
      "C:\\x\\y.jpg",
      "Čelakovský 糖槭 🌿.jpg",
      "a\nb\u0000\u0007.jpg",
      "ä".repeat(127),
      "",
      "half \ud83c.jpg",
      `${"n".repeat(1023)}🌿.jpg`,
    ];
    await bring(await Promise.all(names.map(async (name, k) => file(name, await smallJpeg(100 + k)))));
    const kept = (await store.list("photo")).map((photo) => photo.fileName);
    expect(kept.toSorted()).toEqual([...names.slice(0, 7), "half \ufffd.jpg", "n".repeat(1023)].toSorted());
    const long = (await store.list("photo")).find((photo) => photo.fileName.startsWith("nn"))!;
    expect(long.metadataNote).toContain("is cut");
    expect((await store.originals()).every((name) => /^[0-9a-f]{64}$/.test(name))).toBe(true);
    expect(existsSync(join(store.folder, "..", "x.jpg"))).toBe(false);
  });

  it("is the same when done twice, and keeps one of equal files brought together", async () => {
    const [a, b] = [await smallJpeg(4), await smallJpeg(5)];
    const first = await bring([file("a.jpg", a), file("copy of a.jpg", a), file("b.jpg", b), file("a again.jpg", a)]);
    expect(first).toMatchObject({ fresh: 2, here: 2, refused: 0 });
    const again = await bring([file("a.jpg", a), file("b.jpg", b)]);
    expect(again).toMatchObject({ fresh: 0, here: 2 });
    const text = Buffer.from("text");
    const bad = await bring([file("x.jpg", text), file("y.jpg", text), file("z.jpg", text)]);
    expect(byName(bad.files)).toEqual({ "x.jpg": "not-a-photograph", "y.jpg": "not-a-photograph", "z.jpg": "not-a-photograph" });
    expect(await store.originals()).toHaveLength(2);
  });

  it("tells of a file only after its record is committed", async () => {
    const seen: boolean[] = [];
    const check: Promise<void>[] = [];
    const onOutcome = (one: BroughtFile): void => {
      check.push(store.get("photo", one.photoId!).then((photo) => void seen.push(photo !== undefined)));
    };
    await bring(await Promise.all([1, 2, 3, 4, 5].map(async (k) => file(`${k}.jpg`, await smallJpeg(10 + k)))), { onOutcome });
    await Promise.all(check);
    expect(seen).toEqual([true, true, true, true, true]);
  });

  it("stops when told, keeps what is finished, and finishes on the next run", async () => {
    const abort = new AbortController();
    const all = await Promise.all(Array.from({ length: 30 }, async (_, k) => file(`${k}.jpg`, await smallJpeg(200 + k))));
    const stopped = await bring(all, { signal: abort.signal, progress: (done) => done === 5 && abort.abort() });
    expect(stopped.cancelled).toBe(true);
    expect(stopped.fresh).toBeGreaterThanOrEqual(5);
    expect(stopped.fresh).toBeLessThan(15);
    expect(await store.list("photo")).toHaveLength(stopped.fresh);
    expect(await store.originals()).toHaveLength(stopped.fresh);
    expect(await bring(all)).toMatchObject({ fresh: 30 - stopped.fresh, here: stopped.fresh, cancelled: false });
  });

  it("throws when the book cannot be written, and a later run takes up what lay there", async () => {
    const all = await Promise.all(Array.from({ length: 6 }, async (_, k) => file(`${k}.jpg`, await smallJpeg(300 + k))));
    let edits = 0;
    store.onEdit = () => {
      edits += 1;
      if (edits === 2) throw new Error("disc full");
    };
    const told: BroughtFile[] = [];
    await expect(bring(all, { onOutcome: (one) => told.push(one) })).rejects.toThrow("disc full");
    for (const one of told) expect(await store.get("photo", one.photoId!)).toBeDefined();
    store.onEdit = () => undefined;
    await bring(all);
    expect(await store.list("photo")).toHaveLength(6);
    expect(await store.originals()).toHaveLength(6);
  });

  it("keeps its hands on few files at a time, however many there are", async () => {
    const jpegs = await Promise.all(Array.from({ length: 8 }, (_, k) => smallJpeg(400 + k)));
    let open = 0;
    let most = 0;
    function* many(): Generator<PhotoSource> {
      for (let k = 0; k < 600; k += 1) {
        yield {
          name: `${k}.jpg`,
          open: () => {
            open += 1;
            most = Math.max(most, open);
            return jpegs[k % 8]!;
          },
        };
      }
    }
    const report = await bring(many(), { onOutcome: () => (open -= 1) });
    expect(report.files).toHaveLength(600);
    expect(report).toMatchObject({ fresh: 8, here: 592 });
    expect(most).toBeLessThanOrEqual(workers.threads + 1);
  });
});

describe("remakeDerivatives", () => {
  it("makes what is missing and tells of what cannot be read", async () => {
    const [a, b, c] = [await smallJpeg(6), await smallJpeg(7), await smallJpeg(8)];
    await bring([file("a.jpg", a), file("b.jpg", b), file("c.jpg", c)]);
    const [idA, idB] = [sha(a), sha(b)] as never[];
    rmSync(store.files.derivativePath(idA!, 320));
    rmSync(store.files.derivativePath(idB!, 2048));
    writeFileSync(store.files.originalPath(idB!), "damaged");
    const report = await remakeDerivatives({ store, workers });
    expect(report).toMatchObject({ made: 1, whole: 1, cancelled: false, failed: [{ photoId: sha(b), code: "not-a-photograph" }] });
    expect(await store.files.hasDerivative(idA!, 320)).toBe(true);
    rmSync(store.files.originalPath(idB!));
    expect((await remakeDerivatives({ store, workers })).failed).toMatchObject([{ code: "original-missing" }]);
  });

  it("a second bringing makes them too", async () => {
    const a = await smallJpeg(9);
    await bring([file("a.jpg", a)]);
    rmSync(store.files.derivativePath(sha(a) as never, 2048));
    expect(await bring([file("a.jpg", a)])).toMatchObject({ fresh: 0, here: 1 });
    expect(await store.files.hasDerivative(sha(a) as never, 2048)).toBe(true);
  });
});

describe("bringFolder", () => {
  it("goes through all folders in order, follows no link, passes over system files, leaves the sources alone", async () => {
    const outside = mkdtempSync(join(tmpdir(), "stipule-outside-"));
    writeFileSync(join(outside, "outside.jpg"), await smallJpeg(20));
    mkdirSync(join(folder, "b", "deep"), { recursive: true });
    const tree: Record<string, Buffer> = {
      "z.jpg": await smallJpeg(21),
      "a.jpg": await smallJpeg(22),
      "b/c.jpg": await smallJpeg(23),
      "b/deep/ü 糖.jpg": await smallJpeg(24),
      "b/notes.txt": Buffer.from("notes"),
      ".hidden.jpg": await smallJpeg(25),
      "Thumbs.db": Buffer.from("x"),
    };
    for (const [name, bytes] of Object.entries(tree)) writeFileSync(join(folder, name), bytes);
    writeFileSync(Buffer.concat([Buffer.from(`${folder}/odd-`), Buffer.from([0xff, 0xfe]), Buffer.from(".jpg")]), await smallJpeg(26));
    symlinkSync(outside, join(folder, "b", "link"));
    symlinkSync(join(outside, "outside.jpg"), join(folder, "link.jpg"));
    symlinkSync(folder, join(folder, "b", "loop"));
    const report = await bringFolder(folder, { store, workers, now });
    expect(byName(report.files)).toEqual({
      "a.jpg": "new",
      "c.jpg": "new",
      "ü 糖.jpg": "new",
      "notes.txt": "not-a-photograph",
      "odd-\ufffd\ufffd.jpg": "new",
      "z.jpg": "new",
    });
    expect(report.passedOver).toBe(5);
    for (const [name, bytes] of Object.entries(tree)) expect(readFileSync(join(folder, name)).equals(bytes)).toBe(true);
    rmSync(outside, { recursive: true });
  });

  it("refuses what is no folder in plain words", async () => {
    await expect(bringFolder(join(folder, "none"), { store, workers, now })).rejects.toMatchObject({ code: "folder-unreadable" });
    writeFileSync(join(folder, "file"), "x");
    await expect(bringFolder(join(folder, "file"), { store, workers, now })).rejects.toThrow(/cannot be read \(ENOTDIR\)/);
  });
});

describe("two bringings at once", () => {
  it("record a photograph once", async () => {
    const bytes = await smallJpeg(30);
    const both = await Promise.all([bring([file("a.jpg", bytes)]), bring([file("b.jpg", bytes)])]);
    expect(both.reduce((sum, report) => sum + report.fresh, 0)).toBe(1);
    expect(both.reduce((sum, report) => sum + report.here, 0)).toBe(1);
    expect(await store.list("photo")).toHaveLength(1);
  });
});
