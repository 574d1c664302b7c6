/** Script written into every name and note of a book, through the server, into its drafts and the published page: text stays text. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { accountSections, writeTableCsv } from "../../src/engine/index.js";
import type { BroughtFile, PageDraft, Publication, TableReport } from "../../src/contract/index.js";
import type { DemoBench } from "../support/demo-bench.js";
import { openDemoBench } from "../support/demo-bench.js";
import { smallJpeg } from "../support/odd-photos.js";

const script = `<script>alert(1)</script>"'><img src=x onerror=alert(2)>`;

let demo: DemoBench;
beforeAll(async () => {
  demo = await openDemoBench();
});
afterAll(async () => {
  expect(demo.logged).toEqual([]);
  await demo.close();
});

const send = async <T>(method: string, path: string, body: unknown): Promise<T> => {
  const response = await demo.send(method, path, body);
  const text = await response.text();
  expect([method, path, response.status, response.status === 200 ? "" : text]).toEqual([method, path, 200, ""]);
  return JSON.parse(text) as T;
};

/** Tags whose unquoted part is not what our own pages write, and raw remains of the script. */
const wounds = (markup: string): readonly string[] => {
  const found = [...markup.matchAll(/<script|<img src=x|<\/script|javascript:/gi)].map((match) => match[0]);
  for (const [tag] of markup.matchAll(/<[a-z!/][^>]*>/gi)) {
    const bare = tag.replaceAll(/="[^"]*"/g, "");
    if (/alert|onerror|[\s"'/]on\w+\s*=?/i.test(bare) || /["'=]/.test(bare.replace(/^<!.*/s, ""))) found.push(tag);
  }
  return found;
};

it("finds the wounds it looks for", () => {
  for (const bad of [script, `<p title="${script}">`, '<img alt="a" onload="x()">', "<a href='javascript:x'>", '<p title=x onclick="y">'])
    expect(wounds(bad)).not.toEqual([]);
  expect(wounds('<!doctype html><p class="a" title="&quot;&#39;&gt;&lt;img src=x onerror=alert(2)&gt;">5 &gt; 3</p>')).toEqual([]);
});

it("stays text in the draft and in every file of the published page", async () => {
  const { store } = demo.bench.workbench;
  const all = { plant: await store.list("plant"), outing: await store.list("outing") };
  const p1 = all.plant.find((plant) => plant.id === "P1")!;
  const spot = (await store.get("spot", p1.spotId))!;

  await send("PUT", "/api/book", { ...(await store.info()), title: `Year ${script}`, notice: `Invented ${script}` });
  for (const person of await store.list("person")) await send("PUT", `/api/people/${person.id}`, { ...person, role: script });
  for (const view of await store.list("view")) await send("PUT", `/api/views/${view.id}`, { ...view, name: `${view.id} ${script}` });
  await send("PUT", `/api/spots/${spot.id}`, {
    ...spot,
    name: script,
    setting: script,
    shade: script.slice(0, 60),
    access: script,
    note: script,
  });
  await send("PUT", "/api/plants/P1", { ...p1, nick: script, marks: script, note: script });
  for (const outing of all.outing)
    await send("PUT", `/api/outings/${outing.id}`, { ...outing, weather: script, goal: script, note: script });
  for (const look of (await store.list("look")).filter((one) => one.plantId === "P1"))
    await send("PUT", `/api/looks/${look.id}`, { ...look, note: script });
  for (const reading of (await store.list("reading")).filter((one) => one.plantId === "P1"))
    await send("PUT", `/api/readings/${reading.id}`, { reading: { ...reading, note: script }, confirmed: true });
  for (const record of (await store.list("stageRecord")).filter((one) => one.plantId === "P1"))
    await send("PUT", `/api/stage-records/${record.id}`, { ...record, why: script });
  await send("PUT", "/api/slips/hostile", {
    id: "hostile",
    plantId: "P1",
    on: "2022-11-10",
    by: script.slice(0, 40),
    name: `Epilobium obscurum ${script}`,
    taxonIds: ["obscurum"],
    why: script,
  });

  // The table: titles, names, states, sources, all of it, by the way a table comes in.
  const table = (await store.table(p1.tableId))!;
  const bad = (text: string): string => `${text} ${script}`;
  const hostile = writeTableCsv({
    ...table,
    notice: bad(table.notice),
    taxa: table.taxa.map((taxon) => ({
      ...taxon,
      name: bad(taxon.name),
      authorship: script,
      family: script,
      inOneLine: bad(taxon.inOneLine),
      vernacular: { en: script },
      cautions: [script],
      synonyms: [script],
    })),
    characters: table.characters.map((one) => ({
      ...one,
      name: bad(one.name),
      part: `${one.part}<i onload=a()>`,
      note: script,
      errors: [script],
      answer:
        one.answer.kind === "states"
          ? { ...one.answer, states: one.answer.states.map((state) => ({ ...state, name: bad(state.name), plain: script })) }
          : one.answer,
    })),
    scores: table.scores.map((score) => ({ ...score, words: script, page: script.slice(0, 30) })),
    sources: table.sources.map((source) => ({ ...source, citation: bad(source.citation) })),
    knownHybrids: table.knownHybrids.map((hybrid) => ({ ...hybrid, note: script })),
  });
  const report = await send<TableReport>("POST", "/api/tables", { csv: hostile, tableId: table.id, title: `Table ${script}`, keep: true });
  expect(report.problems.slice(0, 4)).toEqual([]);
  const kept = (await store.table(table.id))!;
  expect(kept.taxa.every((taxon) => taxon.name.includes("<script>"))).toBe(true);
  expect(kept.sources.every((source) => source.citation.includes("<script>"))).toBe(true);

  const brought = await demo.ask(`/api/bring/${encodeURIComponent(`${script}.jpg`)}`, {
    method: "PUT",
    headers: { "content-type": "image/jpeg", "x-stipule": "1", "content-length": String((await smallJpeg(5, 300, 200)).length) },
    body: new Uint8Array(await smallJpeg(5, 300, 200)),
  });
  const { photoId } = (await brought.json()) as BroughtFile;
  await send("PATCH", "/api/sheets", {
    ids: [photoId],
    change: {
      plantId: "P1",
      outingId: "V5",
      part: "stigma",
      caption: script,
      altText: script,
      credit: script,
      licence: script,
      note: script,
    },
  });
  const look = (await store.list("look")).find((one) => one.plantId === "P1" && one.outingId === "V5")!;
  await send("PUT", `/api/looks/${look.id}`, { ...look, photoIds: [...look.photoIds, photoId] });

  const address = `/api/pages/${table.id}/obscurum`;
  const drafted = (await (await demo.ask(address)).json()) as PageDraft;
  for (const section of drafted.sections) expect([section.section, wounds(section.html)]).toEqual([section.section, []]);
  expect(drafted.sections.map((section) => section.html).join("")).toContain("&lt;script&gt;");

  const check = async (): Promise<string> => {
    const page = await send<Publication>("POST", `${address}/publish`, { pdf: false });
    const shown = await demo.ask(page.url);
    expect([shown.status, shown.headers.get("content-security-policy")]).toEqual([200, expect.stringContaining("default-src 'none'")]);
    const html = await shown.text();
    expect(html).toBe(readFileSync(join(page.folder, "index.html"), "utf8"));
    // The page's one script element holds data for machines; it ends where it should.
    const [head = "", data = "", body = "", ...more] = html.split(/<script type="application\/ld\+json">|<\/script>/);
    expect([more, data.includes("<")]).toEqual([[], false]);
    expect(JSON.stringify(JSON.parse(data))).toContain("<script>alert(1)</script>");
    expect(wounds(head + body)).toEqual([]);
    const names = readdirSync(page.folder, { recursive: true, encoding: "utf8" });
    expect(names.join()).not.toMatch(/script|[<>"']/);
    for (const name of names.filter((one) => /\.(svg|xml)$/.test(one)))
      expect([name, wounds(readFileSync(join(page.folder, name), "utf8"))]).toEqual([name, []]);
    return html;
  };
  const html = await check();
  expect(html.match(/&lt;script&gt;alert\(1\)/g)!.length).toBeGreaterThan(20);
  expect(html).toMatch(/alt="&lt;script&gt;/);

  // Every section written over by hand.
  await send("PUT", "/api/accounts/hostile", {
    ...drafted.account,
    id: "hostile",
    author: script,
    edited: Object.fromEntries(accountSections.map((section) => [section, `${section} ${script}`])),
  });
  const edited = await check();
  for (const section of accountSections.filter((one) => one !== "evidence" && one !== "sources"))
    expect([section, edited.includes(`${section} &lt;script&gt;`)]).toEqual([section, true]);
});
