/**
 * Takes pictures of the page's places: for the user guide, and for looking at them; on wish checks each for accessibility
 * faults.
 *
 *   npm run screenshots                  the pictures of the user guide, from a demo book laid down for it
 *   npx tsx scripts/screenshots.ts --base http://127.0.0.1:4810 --out /tmp/stipule-screens [--only year,case]
 *     [--widths 390,1280,1920] [--looks paper,night,field] [--day 2022-08-21] [--whole] [--axe]
 *
 * With --base the server (or the stand-in, tests/support/mock-api.ts) must be running. Ends with exit code 1 when the check
 * finds a fault, or when the page reports an error or a breach of its content policy.
 */
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import sharp from "sharp";
import { parseArgs } from "node:util";
import { AxeBuilder } from "@axe-core/playwright";
import { chromium } from "@playwright/test";
import type { Page } from "@playwright/test";
import { chromiumArgs, chromiumPath, noChromium } from "../tests/browser/support/chromium.js";
import { layDownDemo } from "../tests/browser/support/demo-book.js";
import type { DemoBook } from "../tests/browser/support/demo-book.js";

const { values } = parseArgs({
  options: {
    base: { type: "string", default: "" },
    guide: { type: "boolean", default: false },
    out: { type: "string", default: "/tmp/stipule-screens" },
    only: { type: "string", default: "" },
    widths: { type: "string", default: "390,1280,1920" },
    looks: { type: "string", default: "paper,night" },
    day: { type: "string", default: "" },
    whole: { type: "boolean", default: false },
    axe: { type: "boolean", default: false },
  },
});

interface Shot {
  readonly name: string;
  readonly path: string;
  /** Shown once this is there. */
  readonly wait: string;
  readonly act?: (page: Page) => Promise<void>;
}

/** The places that can be shown of the demo. */
const shots: readonly Shot[] = [
  { name: "year", path: "/", wait: ".dial" },
  { name: "year-table", path: "/", wait: ".dial", act: (page) => page.getByRole("button", { name: "Read it as a table" }).click() },
  { name: "plants", path: "/plants", wait: ".plant-cards" },
  { name: "plant", path: "/plants/P1", wait: ".board" },
  { name: "plant-mown", path: "/plants/P6", wait: ".board" },
  { name: "plant-sensitive", path: "/plants/P4", wait: ".board" },
  {
    name: "plant-cell",
    path: "/plants/P1",
    wait: ".board",
    act: async (page) => {
      await page.locator(".board .tile-seen").first().click();
      await page.locator(".board").evaluate((board) => board.scrollIntoView());
    },
  },
  { name: "plant-photo", path: "/plants/P1", wait: ".strip", act: (page) => page.locator(".strip button").first().click() },
  { name: "case", path: "/plants/P1/case", wait: ".case-columns" },
  { name: "case-cf", path: "/plants/P1/case?upTo=2022-08-21", wait: ".case-columns" },
  { name: "case-hybrid", path: "/plants/P5/case", wait: ".case-columns" },
  { name: "case-mown", path: "/plants/P6/case", wait: ".case-columns" },
  { name: "apart", path: "/species/{table}/apart?taxa=tetragonum,obscurum", wait: ".apart-table" },
  { name: "apart-four", path: "/species/{table}/apart?taxa=tetragonum,obscurum,ciliatum,montanum", wait: ".apart-table" },
  { name: "species", path: "/species", wait: "main h1" },
  { name: "shelf", path: "/shelf", wait: "main h1" },
  { name: "bring", path: "/bring", wait: "main h1" },
  { name: "sorting", path: "/sorting", wait: "main h1" },
  { name: "outing", path: "/outing", wait: "main h1" },
  {
    name: "record",
    path: "/outing/V8?plant=P2",
    wait: ".card",
    act: (page) => page.locator(".card").evaluate((card) => card.scrollIntoView()),
  },
  { name: "begin", path: "/begin", wait: "main h1" },
  { name: "characters", path: "/species/{table}", wait: "main h1" },
  { name: "page", path: "/species/{table}/page/obscurum", wait: "main h1" },
  { name: "proof", path: "/shelf/proof", wait: "main h1" },
  { name: "places", path: "/shelf/places", wait: "main h1" },
  { name: "history", path: "/shelf/history", wait: "main h1" },
];

/** The pictures of the user guide: paper at 1280 px, and how it looks on a phone and at night. */
const guideShots = [
  "year",
  "plants",
  "plant",
  "plant-cell",
  "case-cf",
  "case-hybrid",
  "apart",
  "begin",
  "bring",
  "sorting",
  "record",
  "page",
  "proof",
];
const guidePhone = ["year", "record"];

const tableOf = async (base: string): Promise<string> => {
  const reply = (await (await fetch(`${base}/api/tables`)).json()) as { readonly tables: readonly { readonly id: string }[] };
  return reply.tables[0]?.id ?? "none";
};

interface Round {
  readonly look: string;
  readonly width: number;
  readonly names: readonly string[];
}

const every = shots.map((shot) => shot.name);
const only = values.only === "" ? undefined : values.only.split(",");
const rounds: readonly Round[] = values.guide
  ? [
      { look: "paper", width: 1280, names: only ?? guideShots },
      { look: "field", width: 390, names: only ?? guidePhone },
      { look: "night", width: 1280, names: only ?? ["year"] },
    ]
  : values.looks
      .split(",")
      .flatMap((look) => values.widths.split(",").map((width) => ({ look, width: Number(width), names: only ?? every })));

if (chromiumPath === undefined) throw new Error(noChromium);
const out = values.guide && values.out === "/tmp/stipule-screens" ? "docs/guide/images" : values.out;
mkdirSync(out, { recursive: true });
const demo: DemoBook | undefined = values.base === "" ? await layDownDemo() : undefined;
const base = demo?.server.url ?? values.base;
const table = await tableOf(base);
const faults: string[] = [];
let taken = 0;
const browser = await chromium.launch({ executablePath: chromiumPath, args: chromiumArgs });
try {
  for (const { look, width, names } of rounds) {
    const context = await browser.newContext({
      viewport: { width, height: width < 700 ? 844 : width < 1500 ? 800 : 1080 },
      reducedMotion: "reduce",
      hasTouch: width < 700,
    });
    await context.addInitScript((chosen) => localStorage.setItem("stipule.look", chosen), look);
    const page = await context.newPage();
    let place = "";
    page.on("console", (message) => {
      if (message.type() === "error") faults.push(`${place}: ${message.text()}`);
    });
    page.on("pageerror", (error) => faults.push(`${place}: ${error.message}`));
    for (const shot of shots.filter(({ name }) => names.includes(name))) {
      place = `${shot.name} ${width} ${look}`;
      const path = shot.path.replace("{table}", encodeURIComponent(table));
      const address = new URL(path, base);
      if (values.day !== "" && !address.searchParams.has("upTo")) address.searchParams.set("upTo", values.day);
      await page.goto(address.href);
      try {
        await page.waitForSelector(shot.wait, { timeout: 8000 });
        await shot.act?.(page);
      } catch (error) {
        faults.push(`${place}: ${error instanceof Error ? (error.message.split("\n")[0] ?? "") : String(error)}`);
      }
      await page.evaluate(async (whole) => {
        await document.fonts.ready;
        // A picture of the whole page shows what lies below the window, too.
        if (whole) for (const image of document.images) image.loading = "eager";
        await Promise.all([...document.images].filter((i) => i.loading !== "lazy").map((i) => i.decode().catch(() => undefined)));
      }, values.whole);
      await page.waitForTimeout(200);
      const overflow = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      if (overflow > 0) faults.push(`${place}: the page is ${overflow} px wider than the window`);
      const picture = await page.screenshot({ fullPage: values.whole });
      taken += 1;
      if (values.guide)
        await sharp(picture)
          .webp({ quality: 80 })
          .toFile(join(out, `${shot.name}-${width}-${look}.webp`));
      else await sharp(picture).toFile(join(out, `${shot.name}-${width}-${look}.png`));
      if (values.axe) {
        const { violations } = await new AxeBuilder({ page })
          .withTags(["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"])
          .analyze();
        for (const violation of violations)
          faults.push(
            `${place}: ${violation.id}: ${violation.help}: ${violation.nodes
              .map((n) => n.target.join(" "))
              .slice(0, 4)
              .join(" | ")}`,
          );
      }
    }
    await context.close();
  }
} finally {
  await browser.close();
  await demo?.remove();
}
console.log(faults.length === 0 ? `${taken} pictures in ${out}, no fault` : faults.join("\n"));
process.exitCode = faults.length === 0 ? 0 : 1;
