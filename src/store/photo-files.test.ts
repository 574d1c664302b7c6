import { createHash } from "node:crypto";
import { chmodSync, existsSync, readFileSync, readdirSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Readable } from "node:stream";
import { afterEach, describe, expect, it } from "vitest";
import type { PhotoId } from "../engine/index.js";
import { fixedClock, sampleContent, sampleInfo } from "../../tests/support/store-sample.js";
import { temporaryFolders } from "../../tests/support/temporary-folder.js";
import type { BookStore } from "./index.js";
import { beginBook, openBook } from "./index.js";

const newFolder = temporaryFolders();
const open = new Set<BookStore>();
afterEach(async () => {
  for (const store of open) await store.close();
  open.clear();
});
const begin = async (): Promise<BookStore> => {
  const store = await beginBook(newFolder(), sampleInfo, { clock: fixedClock });
  open.add(store);
  return store;
};
const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
const picture = Buffer.from("not really a picture");

describe("originals", () => {
  it("lie under their hash, read-only, and leave nothing in incoming", async () => {
    const { files, folder } = await begin();
    const id = sha256(picture);
    const added = await files.addOriginal(Readable.from([picture.subarray(0, 7), picture.subarray(7)]));
    expect(added).toEqual({ id, bytes: picture.length, path: join(folder, "originals", id.slice(0, 2), id.slice(2, 4), id), isNew: true });
    expect(readFileSync(added.path)).toEqual(picture);
    expect(statSync(added.path).mode & 0o777).toBe(0o444);
    expect(await files.hasOriginal(added.id)).toBe(true);
    expect(await files.hasOriginal("0".repeat(64) as PhotoId)).toBe(false);
    expect(readdirSync(join(folder, "incoming"))).toEqual([]);
  });

  it("that are there already are left alone", async () => {
    const { files, folder } = await begin();
    const { path } = await files.addOriginal(picture);
    utimesSync(path, 1000, 1000);
    expect(await files.addOriginal(picture)).toMatchObject({ isNew: false, path });
    expect(statSync(path).mtimeMs).toBe(1_000_000);
    const both = await Promise.all([files.addOriginal(Buffer.from("two")), files.addOriginal(Buffer.from("two"))]);
    expect(both.filter((one) => one.isNew)).toHaveLength(1);
    expect(readdirSync(join(folder, "incoming"))).toEqual([]);
  });

  it("whose stream breaks off are not kept", async () => {
    const { files, folder } = await begin();
    const broken = Readable.from(
      (function* () {
        yield picture;
        throw new Error("card pulled out");
      })(),
    );
    await expect(files.addOriginal(broken)).rejects.toThrow("card pulled out");
    expect(readdirSync(join(folder, "incoming"))).toEqual([]);
    expect(readdirSync(join(folder, "originals"))).toEqual([]);
  });

  it("are discarded only when nothing refers to them, nor undo or redo could bring such a thing back", async () => {
    const store = await begin();
    const { id, path } = await store.files.addOriginal(picture);
    const record = { ...sampleContent().photos[0]!, id, outingId: null, plantId: null, stageId: null, viewId: null };
    await store.edit({ label: "photo" }, (edit) => edit.put("photo", record));
    await expect(store.files.discardOriginal(id)).rejects.toMatchObject({ code: "original-in-use", id });
    await store.undo();
    await expect(store.files.discardOriginal(id)).rejects.toMatchObject({ code: "original-in-use" });
    await store.edit({ label: "ends redo" }, (edit) => edit.putInfo({ ...sampleInfo, title: "Other" }));
    expect(existsSync(path)).toBe(true);
    await store.files.discardOriginal(id);
    expect(existsSync(path)).toBe(false);
  });

  it("refuse an id that is no hash, so that no path can be made of it", async () => {
    const { files } = await begin();
    expect(() => files.originalPath("../../etc/passwd" as PhotoId)).toThrow(RangeError);
    expect(() => files.derivativePath("x" as PhotoId, 320)).toThrow(RangeError);
  });
});

describe("derivatives", () => {
  it("are whole or not there, and can be written again", async () => {
    const { files, folder } = await begin();
    const id = sha256(picture) as PhotoId;
    expect(await files.hasDerivative(id, 320)).toBe(false);
    await files.writeDerivative(id, 320, Buffer.from("one"));
    await files.writeDerivative(id, 320, Buffer.from("two"));
    expect(readFileSync(files.derivativePath(id, 320), "utf8")).toBe("two");
    expect(files.derivativePath(id, 320)).toBe(join(folder, "derived", "320", id.slice(0, 2), `${id}.jpg`));
    expect([await files.hasDerivative(id, 320), await files.hasDerivative(id, 2048)]).toEqual([true, false]);
    expect(readdirSync(join(folder, "incoming"))).toEqual([]);
  });
});

describe("the proof of originals", () => {
  it("finds missing, changed and unlisted ones and leftovers, tells its progress, and can be stopped", async () => {
    const store = await begin();
    const photos = sampleContent().photos.map((one) => ({ ...one, outingId: null, plantId: null, stageId: null, viewId: null }));
    const added: Awaited<ReturnType<typeof store.files.addOriginal>>[] = [];
    for (const text of ["a", "b", "c", "d"]) added.push(await store.files.addOriginal(Buffer.from(text)));
    await store.edit({ label: "photos" }, async (edit) => {
      for (const one of added.slice(0, 3)) await edit.put("photo", { ...photos[0]!, id: one.id });
    });
    const steps: [number, number][] = [];
    const sound = await store.proof((done, total) => steps.push([done, total]));
    expect(steps).toEqual([
      [1, 3],
      [2, 3],
      [3, 3],
    ]);
    expect(sound).toMatchObject({
      clean: true,
      originalsChecked: 3,
      findings: [{ code: "original-unlisted", severity: "notice", path: added[3]?.path }],
    });

    chmodSync(added[0]!.path, 0o644);
    writeFileSync(added[0]!.path, "x");
    rmSync(added[1]!.path);
    writeFileSync(join(store.folder, "incoming", "old.part"), "half");
    const report = await store.proof();
    expect(report.clean).toBe(false);
    const found = report.findings.map((one) => [one.code, one.path]);
    expect(found).toHaveLength(4);
    expect(found).toEqual(
      expect.arrayContaining([
        ["original-changed", added[0]?.path],
        ["original-missing", added[1]?.path],
        ["original-unlisted", added[3]?.path],
        ["leftover-temporary", join(store.folder, "incoming", "old.part")],
      ]),
    );
    const stop = new AbortController();
    await expect(store.proof(() => stop.abort(new Error("enough")), stop.signal)).rejects.toThrow("enough");

    await store.close();
    const again = await openBook(store.folder, { clock: fixedClock });
    open.add(again);
    expect(again.opening.leftoversRemoved).toBe(1);
    expect(readdirSync(join(store.folder, "incoming"))).toEqual([]);
  });
});
