/** A species account from the demo year: book, public view, account, folder. */
import { describe, expect, it } from "vitest";
import { accountSource } from "../../src/app/index.js";
import { accountSections, type Account, type BookContent, type IsoDate, type TaxonId } from "../../src/engine/index.js";
import { accountFolder, fontFiles, sectionDraftText, sectionHtml, speciesAccount, type AccountInput } from "../../src/publish/index.js";
import { say } from "../../src/words/index.js";
import { demoContentWithPhotos, readOnlyStore } from "../support/account-fixture.js";

const inputFor = async (taxon: string, change: (content: BookContent) => BookContent = (content) => content): Promise<AccountInput> => {
  const content = change(demoContentWithPhotos());
  const workbench = { store: readOnlyStore(content, "/nowhere"), today: () => "2022-11-30" as IsoDate };
  const { input, photos } = await accountSource(workbench, { tableId: content.tables[0]!.id, taxonId: taxon as TaxonId });
  return {
    ...input,
    photos: photos.map((photo, i) => ({ ...photo, files: [{ path: `images/figure-${i + 1}-1000.jpg`, widthPx: 1000, heightPx: 750 }] })),
  };
};
const filesOf = (input: AccountInput): Map<string, string> =>
  new Map(accountFolder(speciesAccount(input, say), say).map((file) => [file.path, file.content]));
const page = (input: AccountInput): string => filesOf(input).get("index.html")!;
const textOf = (html: string): string =>
  html
    .replace(/<script[^>]*>.*?<\/script>/gs, " ")
    .replace(/<[^>]+>/g, "")
    .replace(/\u00A0/g, " ")
    .replace(/\s+/g, " ");

describe("the account of a settled plant", () => {
  it("has every section in order, with heading and anchor", async () => {
    const html = page(await inputFor("obscurum"));
    const places = accountSections.map((section) => html.indexOf(`id="${section}"`));
    expect(places.every((place) => place > 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(html).toContain('<html lang="en">');
    expect(html).toContain("Illustrative. Not for identification.");
  });

  it("keeps own measures apart from those of floras, each with what it rests on", async () => {
    const model = speciesAccount(await inputFor("obscurum"), say);
    const capsule = model.measures.find((row) => row.characterId === "capsule_len")!;
    expect(capsule).toMatchObject({ ours: "(43–)47–56 mm", n: 12, stems: 5, median: "50.5 mm", floras: "(30–)40–60(–70) mm" });
    const entry = model.plants[0]!.entries.find((e) => e.number === capsule.marks[0]!.number)!;
    expect(entry.values).toEqual([53, 56, 47, 50, 47, 55, 48, 51, 49, 53, 43, 56]);
    // The ratio is computed leaf by leaf and stands among the measures, too.
    expect(model.measures.find((row) => row.characterId === "leaf_ratio")).toMatchObject({
      ours: "3.9–4.5",
      n: 8,
      floras: "(2.8–)3.3–5.0(–6.5)",
    });
  });

  it("counts nothing that was left out, and shows it with its reason", async () => {
    const model = speciesAccount(await inputFor("obscurum"), say);
    const petals = model.measures.find((row) => row.characterId === "petal_len")!;
    expect(petals.n).toBe(13);
    const left = model.plants[0]!.entries.filter((entry) => entry.leftOut !== null);
    expect(left.map((entry) => entry.leftOut).join(" ")).toMatch(/scale not in the plane.*unit slip/);
  });

  it("takes three to five steps in the order of the seasons, and excludes every rival at least once", async () => {
    const model = speciesAccount(await inputFor("obscurum"), say);
    expect(model.steps.length).toBeGreaterThanOrEqual(3);
    expect(model.steps.length).toBeLessThanOrEqual(5);
    const said = model.steps
      .map((step) => step.excludes?.spans.map((s) => s.text).join("") ?? "")
      .join(" ")
      .replace(/\u00A0/g, " ");
    for (const rival of model.rivals) expect(said).toContain(rival.name[0]!.text.split(" ")[1]!);
    expect(model.steps[0]!.stages).toMatch(/^buds/);
    expect(model.steps.at(-1)!.stages).toBe("ripe, shedding – overwintering");
  });

  it("names a look-alike out by one witness only, and one that is still possible", async () => {
    const early = await inputFor("obscurum", (content) => ({ ...content, info: { ...content.info, readAt: "2022-08-21" as IsoDate } }));
    const model = speciesAccount(early, say);
    expect(model.settled).toBe(false);
    expect(model.rivals[0]).toMatchObject({ taxonId: "tetragonum", standing: "Spoken against by one witness only." });
    expect(model.notices.join(" ")).toContain("Not settled");
    const open = speciesAccount(
      await inputFor("obscurum", (content) => ({ ...content, info: { ...content.info, readAt: "2022-07-27" as IsoDate } })),
      say,
    );
    expect(open.rivals[0]).toMatchObject({ taxonId: "tetragonum", left: true });
  });

  it("gives each stage its interval and the number of visits behind it", async () => {
    const model = speciesAccount(await inputFor("obscurum"), say);
    expect(model.year.rows.find((row) => row.stage === "first flowers")).toMatchObject({
      datesText: "6 July",
      began: "between 19 June and 6 July",
      visits: 1,
    });
    expect(model.year.rows[0]!.began).toBe("by 23 March; no visit before");
  });

  it("keeps what a person wrote, marks it in the data and not in print", async () => {
    const account = { edited: { description: "First line.\n\nSecond <b>line</b>.", cautions: "  " } } as unknown as Account;
    const input = await inputFor("obscurum");
    const files = filesOf({ ...input, account: { ...account, author: "T.M.W.", licence: "CC BY 4.0" } });
    const html = files.get("index.html")!;
    expect(html).toContain("<p>First line.</p>");
    expect(html).toContain("Second &lt;b&gt;line&lt;/b&gt;.");
    expect(html).not.toMatch(/drafted|edited by hand/i);
    const data = JSON.parse(files.get("data.json")!) as { origin: Record<string, string> };
    expect(data.origin).toMatchObject({ description: "edited", cautions: "drafted", evidence: "drafted" });
  });

  it("lists photographs without a description", async () => {
    const input = await inputFor("obscurum");
    const described = {
      ...input,
      photos: input.photos.map((photo, i) => ({ ...photo, altText: i === 0 ? "" : "A leaf, seen from above." })),
    };
    expect(speciesAccount(described, say).missingAlt).toEqual([input.photos[0]!.id]);
    expect(page(described)).not.toMatch(/<img(?![^>]*\balt="[^"]+")/);
  });

  it("is the same twice", async () => {
    const input = await inputFor("obscurum");
    expect([...filesOf(input)]).toEqual([...filesOf(input)]);
  });
});

describe("the page as a document", () => {
  it("has no dead link, no double id, and takes nothing from outside", async () => {
    const input = await inputFor("obscurum");
    const files = filesOf(input);
    const html = files.get("index.html")!;
    const ids = [...html.matchAll(/\sid="([^"]+)"/g)].map((m) => m[1]!);
    expect(new Set(ids).size).toBe(ids.length);
    const present = new Set([
      ...files.keys(),
      ...fontFiles.map((font) => font.path),
      ...input.photos.flatMap((p) => p.files.map((f) => f.path)),
    ]);
    for (const [, link] of html.matchAll(/\s(?:href|src)="([^"]+)"/g)) {
      if (link!.startsWith("#")) expect(ids).toContain(link!.slice(1));
      else expect(present).toContain(link!);
    }
    for (const [, url] of files.get("page.css")!.matchAll(/url\(([^)]+)\)/g)) expect(present).toContain(url!);
    expect(html.replace("https://schema.org", "")).not.toMatch(/https?:\/\//);
    expect(html).not.toMatch(/\sstyle="|<style|\son\w+="/);
    expect(html.match(/<script/g)).toHaveLength(1);
    expect(html).toContain("default-src &#39;none&#39;");
  });

  it("carries JSON-LD that parses and says what the page is about", async () => {
    const html = page(await inputFor("obscurum"));
    const json = /<script type="application\/ld\+json">(.*?)<\/script>/s.exec(html)![1]!;
    expect(JSON.parse(json)).toMatchObject({
      "@context": "https://schema.org",
      about: { "@type": "Taxon", name: "Epilobium obscurum", taxonRank: "species", scientificName: { author: "Schreb." } },
    });
  });

  it("links every number of the description to its entry of the evidence", async () => {
    const model = speciesAccount(await inputFor("obscurum"), say);
    for (const part of model.description) {
      for (const line of part.ours) expect(line.marks.length, line.spans[0]!.text).toBeGreaterThan(0);
    }
  });
});

const hostile = `</script><script>alert(1)</script><img src=x onerror=alert(2)>"'&\u2028`;

describe("hostile text", () => {
  it("stays text wherever a person can write", async () => {
    const input = await inputFor("obscurum", (content) => ({
      ...content,
      info: { ...content.info, title: hostile, notice: hostile },
      tables: content.tables.map((table) => ({
        ...table,
        title: hostile,
        notice: hostile,
        stages: table.stages.map((stage) => ({ ...stage, name: `${stage.name}${hostile}` })),
        characters: table.characters.map((character) => ({
          ...character,
          name: `${character.name}${hostile}`,
          part: `${character.part}${hostile}`,
        })),
        sources: table.sources.map((source) => ({ ...source, citation: hostile })),
        taxa: table.taxa.map((taxon) => ({
          ...taxon,
          name: `${taxon.name} ${hostile}`,
          authorship: hostile,
          family: hostile,
          vernacular: { en: hostile, 'x"><script>': hostile },
          cautions: [hostile],
        })),
      })),
      plants: content.plants.map((plant) => ({ ...plant, nick: hostile, marks: hostile })),
      looks: content.looks.map((look) => ({ ...look, note: hostile, by: hostile, lens: hostile.slice(0, 20) })),
      readings: content.readings.map((reading) => ({ ...reading, note: hostile, unit: "</td>" })),
      slips: content.slips.map((slip) => ({ ...slip, name: hostile, why: hostile, by: hostile })),
      photos: content.photos.map((photo) => ({
        ...photo,
        altText: hostile,
        caption: hostile,
        credit: hostile,
        licence: hostile,
        fileName: hostile,
      })),
      accounts: [
        {
          id: "a" as Account["id"],
          taxonId: "obscurum" as TaxonId,
          tableId: content.tables[0]!.id,
          plantIds: [],
          author: hostile,
          licence: hostile,
          edited: Object.fromEntries(accountSections.map((section) => [section, hostile])),
        },
      ],
    }));
    const model = speciesAccount(input, say);
    const html = page(input);
    expect(html.match(/<script/g)).toHaveLength(1);
    expect(html).not.toMatch(/<img src=x/);
    for (const [, json] of html.matchAll(/<script type="application\/ld\+json">(.*?)<\/script>/gs))
      expect(() => JSON.parse(json!) as unknown).not.toThrow();
    for (const section of accountSections) {
      expect(sectionHtml({ ...model, edited: {} }, section, say).markup).not.toMatch(/<script|<img src=x/);
    }
    // Every tag of the page is one of ours: whatever else opens an angle bracket has been escaped.
    const tags = new Set([...html.matchAll(/<\/?([a-z0-9]+)/gi)].map((m) => m[1]!.toLowerCase()));
    expect(
      [...tags].filter(
        (tag) =>
          !/^(html|head|meta|title|link|script|body|a|div|header|p|h[1-4]|i|b|span|aside|nav|ol|ul|li|main|section|figure|img|figcaption|table|caption|thead|tbody|tr|th|td|svg|desc|rect|text|path|circle|article|footer|time)$/.test(
            tag,
          ),
      ),
    ).toEqual([]);
  });
});

describe("a sensitive plant", () => {
  it("shows the place no finer than its class, and neither name, nickname, note nor day", async () => {
    const input = await inputFor("palustre");
    const files = filesOf(input);
    const all = [...files.values()].join("\n");
    expect(all).toContain("54.32");
    expect(all).toContain("4.22");
    expect(textOf(files.get("index.html")!)).toContain("Coordinates rounded to the middle of a 0.01-degree grid cell for protection");
    for (const secret of ["54.319", "54.3193", "4.215", "4.2154", "Fen corner", "Fen plant", "boards"]) expect(all).not.toContain(secret);
    expect(all).not.toMatch(/2022-\d{2}-\d{2}/);
    expect(textOf(files.get("index.html")!)).not.toMatch(/\b\d{1,2} (March|April|May|June|July|August|September|November)\b/);
    expect(input.photos.some((photo) => photo.part === "place")).toBe(false);
  });

  it("of a plain plant shows nothing finer than a thousandth of a degree", async () => {
    const all = [...filesOf(await inputFor("obscurum")).values()].join("\n");
    expect(all).toContain("54.317");
    expect(all).not.toContain("54.3174");
    expect(all).not.toContain("4.2093");
  });
});

describe("draft texts", () => {
  it("give a person plain sentences to begin from", async () => {
    const model = speciesAccount(await inputFor("obscurum"), say);
    expect(sectionDraftText(model, "description")).toContain("Raised lines on the stem: four lines.");
    expect(sectionDraftText(model, "description")).not.toMatch(/[<>]/);
    expect(sectionDraftText(model, "evidence")).toBe("");
  });
});
