/** A species page written to disk: all of it or nothing, no place given away, printed where a Chromium is. */
import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import {
  accountSource,
  draftPage,
  findChromium,
  firstLeak,
  listPages,
  printPdf,
  publishPage,
  Refused,
  type PublishEffects,
} from "../../src/app/index.js";
import { accountSections, type BookContent, type IsoDate, type TaxonId } from "../../src/engine/index.js";
import { demoContentWithPhotos, photoIdOf, readOnlyStore } from "../support/account-fixture.js";
import { temporaryFolders } from "../support/temporary-folder.js";

const newFolder = temporaryFolders();
const picture = await sharp({ create: { width: 400, height: 300, channels: 3, background: "#6a8a4a" } })
  .jpeg()
  .toBuffer();
const effects: PublishEffects = {
  publicImage: async () => Promise.resolve({ ok: true, value: { bytes: picture, widthPx: 400, heightPx: 300, mediaType: "image/jpeg" } }),
};
const bench = (content: BookContent, folder = newFolder()) => ({
  store: readOnlyStore(content, folder),
  today: () => "2022-11-30" as IsoDate,
});
const of = (content: BookContent, taxon: string) => ({ tableId: content.tables[0]!.id, taxonId: taxon as TaxonId });
const allFiles = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));

describe("publishing", () => {
  it("writes a folder that stands alone, and says what it held back", async () => {
    const content = demoContentWithPhotos();
    const result = await publishPage(bench(content), of(content, "obscurum"), effects);
    const files = allFiles(result.folder);
    expect(files).toHaveLength(result.files);
    const html = readFileSync(join(result.folder, "index.html"), "utf8");
    for (const [, path] of html.matchAll(/\ssrc="([^"]+)"/g)) expect(existsSync(join(result.folder, path!)), path).toBe(true);
    expect(files.filter((file) => file.endsWith(".woff2")).length).toBeGreaterThan(3);
    expect(result.missingAlt.length).toBeGreaterThan(0);
    expect(result.heldBack.join(" ")).toContain("0.001-degree");
    expect(result.pdf).toMatchObject({ made: false, path: null });
    // No original's name goes out: names tell of places and people.
    expect(files.some((file) => /HBC/.test(file)) || html.includes("HBC_")).toBe(false);
  });

  it("gives no true place away in any file of a sensitive plant", async () => {
    const content = demoContentWithPhotos();
    const { folder, heldBack } = await publishPage(bench(content), of(content, "palustre"), effects);
    for (const file of allFiles(folder)) {
      const bytes = readFileSync(file).toString("latin1");
      for (const secret of ["54.319", "4.215", "Fen corner", "fen corner"])
        expect(bytes.includes(secret), `${secret} in ${file}`).toBe(false);
    }
    expect(heldBack.join(" ")).toMatch(/0\.01-degree.*withheld/);
  });

  it("refuses when a note gives the place away, and leaves the former page as it was", async () => {
    const content = demoContentWithPhotos();
    const folder = newFolder();
    const { folder: page } = await publishPage(bench(content, folder), of(content, "obscurum"), effects);
    writeFileSync(join(page, "mark.txt"), "former");
    const telling: BookContent = {
      ...content,
      looks: content.looks.map((look, i) => (i === 0 ? { ...look, note: "the sedge stands at 54.31931, 4.21544" } : look)),
    };
    await expect(publishPage(bench(telling, folder), of(content, "obscurum"), effects)).rejects.toMatchObject({ code: "place-would-leak" });
    expect(readFileSync(join(page, "mark.txt"), "utf8")).toBe("former");
    expect(readdirSync(dirname(page))).toEqual(["epilobium-obscurum"]);
  });

  it("leaves nothing half done when an image fails, and replaces the page as a whole", async () => {
    const content = demoContentWithPhotos();
    const folder = newFolder();
    const failing: PublishEffects = { publicImage: async () => Promise.reject(new Error("disk full")) };
    await expect(publishPage(bench(content, folder), of(content, "obscurum"), failing)).rejects.toThrow("disk full");
    const { folder: page } = await publishPage(bench(content, folder), of(content, "obscurum"), effects);
    expect(readdirSync(dirname(page))).toEqual(["epilobium-obscurum"]);
    writeFileSync(join(page, "old.txt"), "old");
    await publishPage(bench(content, folder), of(content, "obscurum"), effects);
    expect(existsSync(join(page, "old.txt"))).toBe(false);
  });

  it("publishes nothing for a taxon that no plant stands for", async () => {
    const content = demoContentWithPhotos();
    await expect(publishPage(bench(content), of(content, "hirsutum"), effects)).rejects.toBeInstanceOf(Refused);
  });

  it("finds a secret by name and by coordinates", () => {
    const secret = { label: "Fen corner", lat: 54.31931, lon: 4.21544, publishAs: "0.01-degree" as const, name: "Fen corner" };
    expect(firstLeak([{ path: "a", content: "at the FEN CORNER" }], [secret])).toEqual({ path: "a", label: "Fen corner" });
    expect(firstLeak([{ path: "a", content: "54.32, 4.22" }], [secret])).toBeNull();
  });

  it("finds a name however it is written: broken over a line, composed, escaped, with a tag in it", () => {
    const named = (name: string) => ({ label: "x", lat: null, lon: null, publishAs: "withheld" as const, name });
    const found = (content: string, name: string) => firstLeak([{ path: "a", content }], [named(name)]) !== null;
    expect(found("at the Fen\ncorner", "Fen corner")).toBe(true);
    expect(found("at the Fen\u00A0corner", "Fen corner")).toBe(true);
    expect(found("in the Mu\u0308hlgraben", "M\u00FChlgraben")).toBe(true);
    expect(found(JSON.stringify({ note: 'by "Old Tom"' }), 'by "Old Tom"')).toBe(true);
    expect(found('pond <span class="nb">3\u20134</span> m', "Pond 3\u20134 m")).toBe(true);
    expect(found("at the fence", "Fen corner")).toBe(false);
  });

  it("never gives a sensitive place as measured", async () => {
    const content = demoContentWithPhotos();
    const measured: BookContent = {
      ...content,
      spots: content.spots.map((spot) => ({ ...spot, sensitiveBecause: "rare", publishAs: "as-measured" })),
    };
    const { folder } = await publishPage(bench(measured), of(measured, "obscurum"), effects);
    const spot = content.spots.find((one) => one.id === content.plants.find((plant) => plant.id === "P1")!.spotId)!;
    for (const file of ["index.html", "data.json"]) {
      const text = readFileSync(join(folder, file), "utf8");
      expect([text.includes(spot.lat!.toFixed(4)), text.includes(spot.lon!.toFixed(4))], file).toEqual([false, false]);
    }
  });

  it("makes the pages of a book one after another: the same page asked for twice at once is made twice", async () => {
    const workbench = bench(demoContentWithPhotos());
    const asked = of(demoContentWithPhotos(), "obscurum");
    const [a, b] = await Promise.all([publishPage(workbench, asked, effects), publishPage(workbench, asked, effects)]);
    expect(allFiles(b.folder)).toHaveLength(a.files);
    expect(readdirSync(dirname(b.folder))).toEqual(["epilobium-obscurum"]);
  });

  it("holds back what nobody has said anything of where the place is sensitive, and counts days, not months", async () => {
    const content = demoContentWithPhotos();
    const unsaid = content.photos.filter((photo) => photo.plantId === "P4").slice(0, 3);
    const blank: BookContent = {
      ...content,
      photos: content.photos.map((photo) => (unsaid.includes(photo) ? { ...photo, viewId: null, part: "" } : photo)),
    };
    const source = await accountSource(bench(blank), of(blank, "palustre"));
    expect(source.photos.map((photo) => photo.id).filter((id) => unsaid.some((photo) => photo.id === id))).toEqual([]);
    const outings = new Set(
      [...content.stops, ...content.looks, ...content.readings, ...content.stageRecords]
        .filter((of_) => of_.plantId === "P4")
        .map((of_) => of_.outingId),
    );
    const { folder } = await publishPage(bench(content), of(content, "palustre"), effects);
    expect(readFileSync(join(folder, "index.html"), "utf8")).toMatch(new RegExp(`visited on ${outings.size} days`));
  });
});

describe("before publishing", () => {
  it("lists the pages there are and drafts one section by section", async () => {
    const content = demoContentWithPhotos();
    const workbench = bench(content);
    const pages = await listPages(workbench);
    expect(pages.map((page) => [page.taxonId, page.settled])).toEqual([
      ["ciliatum", true],
      ["montanum", true],
      ["obscurum", true],
      ["palustre", true],
    ]);
    const draft = await draftPage(workbench, of(content, "obscurum"), (id) => `/api/sheets/${id}/image`);
    expect(draft.sections.map((section) => section.section)).toEqual([...accountSections]);
    expect(draft.sections.every((section) => section.html !== "" && section.origin === "drafted")).toBe(true);
    expect(draft.sections.find((section) => section.section === "evidence")!.html).toContain("/api/sheets/");
    // Whoever writes a word has not chosen plants by it.
    expect(draft.account.plantIds).toEqual([]);
    expect(draft.missingAlt.map((photo) => photo.photoId)).toContain(photoIdOf("V5-P1-stigma-4201"));
  });
});

const chromium = await findChromium();
describe("printing", () => {
  it("says so where there is no program", async () => {
    expect(await findChromium({ PATH: newFolder() })).toBeNull();
    expect(await findChromium({ STIPULE_CHROMIUM: "/nowhere/at-all", PATH: process.env["PATH"] })).toBeNull();
    const content = demoContentWithPhotos();
    const print: typeof printPdf = async () => Promise.resolve({ ok: false, problem: { code: "no-program", reason: "" } });
    const result = await publishPage(bench(content), of(content, "montanum"), { ...effects, print }, { pdf: true });
    expect(result.pdf).toMatchObject({ made: false, path: null });
    expect(result.pdf.text).toContain("print it from your browser");
  });

  it("ends a program that hangs and says that it did", async () => {
    const folder = newFolder();
    const [page, program] = [join(folder, "index.html"), join(folder, "hang.sh")];
    writeFileSync(page, "<html><head></head><body></body></html>");
    writeFileSync(program, "#!/bin/sh\nexec sleep 60\n", { mode: 0o755 });
    const printed = await printPdf({ htmlPath: page, pdfPath: join(folder, "a.pdf"), paper: "A4", program, timeoutMs: 300 });
    expect(printed).toMatchObject({ ok: false, problem: { code: "timed-out" } });
    expect(readdirSync(folder).toSorted()).toEqual(["hang.sh", "index.html"]);
  });

  it.skipIf(chromium === null)("prints A4 and Letter, tagged, and leaves no trace in the folder", async () => {
    const content = demoContentWithPhotos();
    for (const [paper, size] of [
      ["A4", /595 x 842|594\.96 x 841\.92/],
      ["Letter", /612 x 792/],
    ] as const) {
      const { folder, pdf } = await publishPage(bench(content), of(content, "montanum"), effects, { pdf: true, paper });
      expect(pdf.made, pdf.text).toBe(true);
      expect(readdirSync(folder).filter((name) => name.startsWith("."))).toEqual([]);
      const bytes = readFileSync(pdf.path!);
      expect(bytes.subarray(0, 5).toString()).toBe("%PDF-");
      let facts: string;
      try {
        facts = execFileSync("pdfinfo", [pdf.path!], { encoding: "utf8" });
      } catch {
        continue; // No poppler here: that it is a PDF was checked above.
      }
      expect(facts).toMatch(size);
      expect(facts).toMatch(/Tagged:\s+yes/);
    }
  });
});
