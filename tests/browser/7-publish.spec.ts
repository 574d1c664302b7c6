/** Publishing: a folder that works without a server, a PDF, and no fine place of a sensitive plant in any of it. */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "@playwright/test";
import { demoUrl, expect, test, watchFaults } from "./support/walk.js";

test.use({ baseURL: demoUrl });
test.describe.configure({ timeout: 180_000 });

const filesIn = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(entry.parentPath, entry.name));

const publish = async (page: Page): Promise<string> => {
  await page.getByRole("button", { name: "Publish to a folder" }).click();
  const done = page.getByRole("status").filter({ hasText: "written to" });
  await expect(done).toBeVisible({ timeout: 150_000 });
  return done.getByRole("code").innerText();
};

test("the page of short-fruited willowherb from the ditch plant, read from the folder without a server", async ({ page, context }) => {
  await page.goto("/species/willowherbs/page/obscurum");
  await expect(page.getByRole("heading", { level: 1 })).toContainText("short-fruited willowherb");
  await expect(page.getByRole("heading", { name: "How to be sure" })).toBeVisible();
  await expect(page.getByText(/Capsule length when full-grown: \(43\S*\)\S+\smm, n\s=\s1\d/).first()).toBeVisible();
  const missing = page.getByText(/^Alternative text missing: \d+ photographs$/);
  await missing.click();
  await expect(page.getByLabel(/^Alternative text of HBC_/).first()).toBeVisible();

  const folder = await publish(page);
  const names = filesIn(folder).map((file) => path.relative(folder, file));
  expect(names).toContain("index.html");
  const pdf = filesIn(folder).find((file) => file.endsWith(".pdf"));
  expect(pdf, "a PDF lies in the folder").toBeDefined();
  expect(
    readFileSync(pdf ?? "")
      .subarray(0, 5)
      .toString("latin1"),
  ).toBe("%PDF-");

  const reader = await context.newPage();
  const faults = watchFaults(reader);
  const asked: string[] = [];
  reader.on("request", (request) => asked.push(request.url()));
  await reader.goto(pathToFileURL(path.join(folder, "index.html")).href);
  await expect(reader.getByRole("heading", { level: 1 })).toContainText("Epilobium obscurum");
  await expect(reader.getByText("Not for identification").first()).toBeVisible();
  const broken = await reader.getByRole("img").evaluateAll(async (all) =>
    (
      await Promise.all(
        all
          .filter((image): image is HTMLImageElement => image instanceof HTMLImageElement)
          .map(async (image) => {
            image.loading = "eager";
            await image.decode().catch(() => undefined);
            return image.naturalWidth === 0 ? image.src : "";
          }),
      )
    ).filter((src) => src !== ""),
  );
  expect(broken).toEqual([]);
  expect(asked.filter((url) => !url.startsWith("file:"))).toEqual([]);
  expect(faults).toEqual([]);
  await reader.close();
});

test("nothing published of the fen plant says where it stands", async ({ page, request }) => {
  const { spots } = (await (await request.get("/api/places")).json()) as {
    readonly spots: readonly {
      readonly id: string;
      readonly lat: number | null;
      readonly lon: number | null;
      readonly sensitiveBecause: string;
    }[];
  };
  const fen = spots.find((spot) => spot.sensitiveBecause !== "");
  const fine = [fen?.lat, fen?.lon].map(String);
  // More than two decimals, else this test looks for nothing.
  for (const text of fine) expect(text).toMatch(/\.\d{3,}$/);

  await page.goto("/species/willowherbs/page/palustre");
  await expect(page.getByRole("heading", { level: 1 })).toContainText("marsh willowherb");
  await expect(page.getByText("Held back or made coarser")).toBeVisible();
  const folder = await publish(page);
  const files = filesIn(folder);
  expect(files.length).toBeGreaterThan(3);
  for (const file of files) {
    const bytes = readFileSync(file).toString("latin1");
    for (const text of fine) expect(bytes.includes(text), `${text} in ${path.basename(file)}`).toBe(false);
    if (/\.(jpe?g|webp|avif|png)$/.test(file)) expect(bytes.includes("Exif\0\0"), `EXIF in ${path.basename(file)}`).toBe(false);
  }
  const text = files
    .filter((file) => /\.(html|json|txt)$/.test(file))
    .map((file) => readFileSync(file, "utf8"))
    .join("\n");
  expect(text).toContain("54.32");
});
