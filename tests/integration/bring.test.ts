/**
 * Bringing photographs into a real book: what is kept, what is refused, and that nothing acknowledged is lost when the
 * process is killed at random moments. Rounds: 3, or as many as STIPULE_KILL_ROUNDS says; STIPULE_KILL_SEED changes the moments.
 */
import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { bringFolder } from "../../src/app/bring-folder.js";
import { bringPhotos } from "../../src/app/bring-photos.js";
import { remakeDerivatives } from "../../src/app/remake-derivatives.js";
import type { BroughtFile } from "../../src/contract/index.js";
import { openPhotoWorkers } from "../../src/media/index.js";
import { beginBook, openBook } from "../../src/store/index.js";
import { compiledChild } from "../support/compiled-child.js";
import { exifTag, smallJpeg, withExif, zeroPng } from "../support/odd-photos.js";
import { seeded } from "../support/store-kill-child.js";
import { fixedClock, sampleInfo } from "../support/store-sample.js";
import { temporaryFolders } from "../support/temporary-folder.js";

const newFolder = temporaryFolders();
const program = await compiledChild("bring-kill-child");
const workers = openPhotoWorkers({ threads: 2 });
afterAll(() => workers.close());
const rounds = Number(process.env["STIPULE_KILL_ROUNDS"] ?? 3);
const seed = Number(process.env["STIPULE_KILL_SEED"] ?? 1);
const now = fixedClock;
const begin = async () => {
  const folder = newFolder();
  return { folder, store: await beginBook(folder, sampleInfo, { clock: fixedClock }) };
};
const sha = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

describe("bringing into a real book", () => {
  it("keeps good files, refuses bad ones without a trace, and proves clean", async () => {
    const { store } = await begin();
    const from = newFolder();
    const good = await smallJpeg(1, 400, 300);
    const longest = `${"ä".repeat(125)}a.jpg`;
    expect(Buffer.byteLength(longest)).toBe(255);
    mkdirSync(join(from, "card"));
    const files: Record<string, Buffer> = {
      "card/good.jpg": good,
      "card/same.jpg": good,
      "cut.jpg": good.subarray(0, 3000),
      "huge.png": zeroPng(30_000, 30_000),
      "empty.jpg": Buffer.alloc(0),
      "text.jpg": Buffer.from("text"),
      [longest]: await smallJpeg(2),
    };
    for (const [name, bytes] of Object.entries(files)) writeFileSync(join(from, name), bytes);
    const report = await bringFolder(from, { store, workers, now });
    expect(report).toMatchObject({ fresh: 2, here: 1, refused: 4 });
    expect(Object.fromEntries(report.files.filter((one) => one.outcome === "refused").map((one) => [one.fileName, one.code]))).toEqual({
      "cut.jpg": "cut-short",
      "huge.png": "too-many-pixels",
      "empty.jpg": "empty",
      "text.jpg": "not-a-photograph",
    });
    const proof = await store.proof();
    expect(proof).toMatchObject({ clean: true, originalsChecked: 2, findings: [] });
    const photos = await store.list("photo");
    expect(photos.map((photo) => photo.id).toSorted()).toEqual([sha(good), sha(files[longest]!)].toSorted());
    for (const photo of photos) expect(sha(readFileSync(store.files.originalPath(photo.id)))).toBe(photo.id);
    expect((await store.history(10)).every((edit) => !edit.undoable)).toBe(true);
    // Bringing cannot be undone by accident.
    expect(await store.undo()).toBeNull();
    await store.close();
  });

  it("keeps what odd files say and what they are called, also after the book was closed", async () => {
    const { folder, store } = await begin();
    const jpeg = await smallJpeg(4);
    const dated = (text: string): Buffer => withExif(jpeg, { exif: { [exifTag.dateTimeOriginal]: text } });
    const sources: Record<string, Buffer> = {
      "no exif.png": jpeg,
      "31 February.jpg": dated("2022:02:31 10:00:00"),
      "hour 25.jpg": dated("2022:07:27 25:00:00"),
      "blank.jpg": dated("    :  :     :  :  "),
      "next decade.jpg": dated("2031:07:27 10:00:00"),
      "../../climbs.jpg": await smallJpeg(5),
      "/etc/passwd": await smallJpeg(6),
      "..": await smallJpeg(7),
      "C:\\x\\y.jpg": await smallJpeg(8),
      "Čelakovský 糖槭 🌿.jpg": await smallJpeg(9),
      [`${"ä".repeat(125)}a.jpg`]: await smallJpeg(10),
      "a\nb\u0000.jpg": await smallJpeg(11),
    };
    const report = await bringPhotos(
      Object.entries(sources).map(([name, bytes]) => ({ name, open: () => bytes })),
      { store, workers, now },
    );
    expect(report).toMatchObject({ fresh: 12, here: 0, refused: 0 });
    await store.close();
    const again = await openBook(folder, { clock: fixedClock });
    const photos = new Map((await again.list("photo")).map((photo) => [photo.fileName, photo]));
    expect([...photos.keys()].toSorted()).toEqual(Object.keys(sources).toSorted());
    for (const [name, bytes] of Object.entries(sources)) {
      const { id, format } = photos.get(name)!;
      expect([name, id, format]).toEqual([name, sha(bytes), "jpeg"]);
      expect(again.files.originalPath(id).startsWith(join(folder, "originals"))).toBe(true);
      expect(readFileSync(again.files.originalPath(id)).equals(bytes)).toBe(true);
    }
    const said = (name: string) => [photos.get(name)!.takenCamera, photos.get(name)!.metadataNote];
    expect(said("no exif.png")).toEqual([
      null,
      "The file carries no metadata: no time and no place. The name says otherwise, but the content is JPEG.",
    ]);
    expect(said("31 February.jpg")).toEqual([null, "The time taken, “2022:02:31 10:00:00”, does not exist."]);
    expect(said("hour 25.jpg")).toEqual([null, expect.stringContaining("2022:07:27 25:00:00")]);
    expect(said("blank.jpg")[0]).toBeNull();
    expect(said("next decade.jpg")).toEqual(["2031-07-27T10:00:00", expect.stringContaining("has not come yet")]);
    expect(await again.proof()).toMatchObject({ clean: true, originalsChecked: 12, findings: [] });
    expect(readdirSync(join(folder, ".."))).not.toContain("climbs.jpg");
    await again.close();
  });

  it("makes lost small copies again", async () => {
    const { folder, store } = await begin();
    await bringPhotos([{ name: "a.jpg", open: async () => await smallJpeg(3) }], { store, workers, now });
    const [photo] = await store.list("photo");
    const { rmSync } = await import("node:fs");
    rmSync(join(folder, "derived"), { recursive: true });
    expect(await remakeDerivatives({ store, workers })).toMatchObject({ made: 1, failed: [] });
    expect(await store.files.hasDerivative(photo!.id, 2048)).toBe(true);
    await store.close();
  });
});

/** Runs the child until it has said `lines` lines and `delayMs` more, kills it, and gives all it said. */
const runAndKill = (book: string, from: string, lines: number, delayMs: number): Promise<{ said: BroughtFile[]; killed: boolean }> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...program, book, from], { stdio: ["ignore", "pipe", "pipe"] });
    let out = "";
    let err = "";
    let timer: NodeJS.Timeout | undefined;
    child.stdout.setEncoding("utf8").on("data", (part: string) => {
      out += part;
      if (timer === undefined && out.split("\n").length > lines) timer = setTimeout(() => child.kill("SIGKILL"), delayMs);
    });
    child.stderr.setEncoding("utf8").on("data", (part: string) => (err += part));
    child.on("error", reject);
    child.on("close", (code, signal) => {
      clearTimeout(timer);
      if (signal !== "SIGKILL" && code !== 0) reject(new Error(`the child failed: ${err}`));
      // A line without its end was not said.
      else {
        const said = out
          .split("\n")
          .slice(0, -1)
          .map((line) => JSON.parse(line) as BroughtFile);
        resolve({ said, killed: signal === "SIGKILL" });
      }
    });
  });

it(`loses nothing acknowledged in ${rounds} kills (seed ${seed})`, async () => {
  const { folder, store: first } = await begin();
  await first.close();
  const from = newFolder();
  const count = 16 * rounds;
  for (let k = 0; k < count; k += 1) writeFileSync(join(from, `${String(k).padStart(4, "0")}.jpg`), await smallJpeg(1000 + k, 500, 400));
  const before = readdirSync(from).map((name) => sha(readFileSync(join(from, name))));
  const random = seeded(seed);
  const acknowledged = new Set<string>();
  let kills = 0;
  for (let round = 1; round <= rounds; round += 1) {
    // What is here already is said too, and quickly: wait for new ones.
    const { said, killed } = await runAndKill(folder, from, acknowledged.size + 1 + Math.floor(random() * 12), random() * 60);
    if (killed) kills += 1;
    for (const one of said) {
      expect(one.outcome).not.toBe("refused");
      acknowledged.add(one.photoId!);
    }
    const store = await openBook(folder, { clock: fixedClock });
    const there = new Set((await store.list("photo")).map((photo) => photo.id as string));
    for (const id of acknowledged) expect(there.has(id)).toBe(true);
    for (const id of acknowledged) {
      expect(await store.files.hasDerivative(id as never, 320)).toBe(true);
      expect(await store.files.hasDerivative(id as never, 2048)).toBe(true);
    }
    const proof = await store.proof();
    expect(proof.clean).toBe(true);
    for (const finding of proof.findings) expect(finding.code).toBe("original-unlisted");
    await store.close();
  }
  expect(kills).toBeGreaterThanOrEqual(Math.ceil(rounds / 2));

  // The same folder once more takes up what the kills left.
  const store = await openBook(folder, { clock: fixedClock });
  const report = await bringFolder(from, { store, workers, now });
  expect(report.fresh + report.here).toBe(count);
  expect(await store.list("photo")).toHaveLength(count);
  expect(await store.proof()).toMatchObject({ clean: true, originalsChecked: count, findings: [] });
  expect((await remakeDerivatives({ store, workers })).whole).toBe(count);
  expect(readdirSync(from).map((name) => sha(readFileSync(join(from, name))))).toEqual(before);
  await store.close();
}, 400_000);
