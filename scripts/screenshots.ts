/**
 * Takes pictures of the page's places, for looking at them and for the user guide, and on wish checks each for
 * accessibility faults. The server (or the stand-in, tests/support/mock-api.ts) must be running.
 *
 *   npx tsx scripts/screenshots.ts --base http://127.0.0.1:4810 --out docs/guide/images [--only year,case] [--widths 390,1280,1920]
 *     [--looks paper,night] [--day 2022-08-21] [--whole] [--axe]
 *
 * Ends with exit code 1 when the check finds a fault, or when the page reports an error or a breach of its content policy.
 */
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { AxeBuilder } from "@axe-core/playwright";
import { chromium } from "@playwright/test";
import type { Page } from "@playwright/test";

const { values } = parseArgs({
  options: {
    base: { type: "string", default: "http://127.0.0.1:4810" },
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
  { name: "plant-cell", path: "/plants/P1", wait: ".board", act: (page) => page.locator(".board .tile-seen").first().click() },
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
];

const tableOf = async (): Promise<string> => {
  const reply = (await (await fetch(`${values.base}/api/tables`)).json()) as { readonly tables: readonly { readonly id: string }[] };
  return reply.tables[0]?.id ?? "none";
};

const wanted = values.only === "" ? shots : shots.filter((shot) => values.only.split(",").includes(shot.name));
mkdirSync(values.out, { recursive: true });
const table = await tableOf();
const faults: string[] = [];
const browser = await chromium.launch({
  executablePath: process.env["STIPULE_CHROMIUM"] ?? "/usr/bin/chromium",
  args: [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ],
});
try {
  for (const look of values.looks.split(",")) {
    for (const width of values.widths.split(",").map(Number)) {
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
      for (const shot of wanted) {
        place = `${shot.name} ${width} ${look}`;
        const path = shot.path.replace("{table}", encodeURIComponent(table));
        const address = new URL(path, values.base);
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
        await page.screenshot({ path: join(values.out, `${shot.name}-${width}-${look}.png`), fullPage: values.whole });
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
  }
} finally {
  await browser.close();
}
console.log(faults.length === 0 ? `${wanted.length} places, no fault` : faults.join("\n"));
process.exitCode = faults.length === 0 ? 0 : 1;
