/** Real photographs brought through the page, sorted by keys; the outing of the demo that was left unsorted. */
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import type { Page } from "@playwright/test";
import { demoUrl, expect, home, sharedData, test } from "./support/walk.js";

test.use({ baseURL: demoUrl });
test.describe.configure({ mode: "serial" });

const images = path.join(sharedData, "images");
const photosIn = (folder: string): readonly string[] =>
  existsSync(path.join(images, folder))
    ? readdirSync(path.join(images, folder))
        .filter((name) => /\.jpe?g$/.test(name))
        .sort()
        .map((name) => path.join(images, folder, name))
    : [];
const real = ["orientation", "leaf_scans", "known_size", "exif"].flatMap(photosIn);
const unreadable = ["37_not_an_image.jpg", "38_empty_file.jpg"];
const hashOf = (file: string): string => createHash("sha256").update(readFileSync(file)).digest("hex");

/** Brings the files and waits until all have been looked at; the counts as the page says them. */
const bring = async (page: Page): Promise<{ readonly fresh: number; readonly already: number; readonly refused: readonly string[] }> => {
  await page.goto("/bring");
  await page.getByLabel("Choose files").setInputFiles([...real]);
  await expect(page.getByText("All have been looked at.")).toBeVisible({ timeout: 60_000 });
  const said = await page.getByRole("main").innerText();
  const count = (pattern: RegExp): number => {
    const word = pattern.exec(said)?.[1];
    return word === undefined ? 0 : word === "one" ? 1 : Number(word);
  };
  const refused = page.getByRole("region", { name: /refused$/ }).getByRole("listitem");
  return {
    fresh: count(/(one|\d+) new photograph/),
    already: count(/(one|\d+) (?:was|were) already here/),
    // Two arrive at a time, so their order is nobody's.
    refused: (await refused.allInnerTexts()).map((text) => text.trim().split(/\s/)[0] ?? "").toSorted(),
  };
};

test("a camera that runs off is noticed at the unsorted outing; the shift puts its photographs to their plants", async ({ page }) => {
  await page.goto("/sorting");
  const clock = page.getByRole("region", { name: "The camera's clock" });
  await expect(clock).toContainText("7 min");
  await expect(clock).toContainText("behind the phone");
  await expect(clock).toContainText("10 of 10 photographs lie on a stop");
  await clock.getByRole("button", { name: /^Shift the camera by/ }).click();
  await expect(clock).toContainText("Shifted. 10 photographs lie on its plant now");
  await expect(page.getByRole("navigation", { name: "Trays" }).getByRole("button", { name: /^Ditch plant 37/ })).toBeVisible();
});

test("new, here already, refused by name; the originals stay byte for byte", async ({ page }) => {
  test.skip(real.length === 0, `No open data at ${images}; name its folder by the environment variable STIPULE_SHARED.`);
  const distinct = new Set(real.filter((file) => !unreadable.includes(path.basename(file))).map(hashOf));
  const first = await bring(page);
  for (const name of unreadable) expect(first.refused).toContain(name);
  expect(first.fresh + first.already + first.refused.length).toBe(real.length);
  expect(first.fresh).toBeGreaterThan(30);

  const kept = new Set(
    readdirSync(path.join(home, "hobbin-carr", "originals"), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => hashOf(path.join(entry.parentPath, entry.name))),
  );
  const brought = real.filter((file) => !first.refused.includes(path.basename(file)));
  for (const file of brought) expect(kept.has(hashOf(file)), `${path.basename(file)} is in the book as it was`).toBe(true);
  expect(brought.length).toBeLessThanOrEqual(distinct.size);

  const again = await bring(page);
  expect(again.fresh).toBe(0);
  expect(again.already).toBe(first.fresh + first.already);
  expect(again.refused).toEqual(first.refused);
});

test("many at once by keys: plant, view, stage; what is missing shrinks; undo", async ({ page }) => {
  test.skip(real.length === 0, `No open data at ${images}.`);
  await page.goto("/sorting");
  const trays = page.getByRole("navigation", { name: "Trays" });
  await trays.getByRole("button", { name: /^unsorted/ }).click();
  const contact = page.getByRole("listbox", { name: /^Sheets in/ });
  const sheet = contact.getByRole("option", { name: /^32_xmp_only\.jpg/ });
  await sheet.click();
  await page.keyboard.press("Shift+ArrowRight");
  await page.keyboard.press("Shift+ArrowRight");
  await expect(page.getByText(/^3 of \d+ chosen in “unsorted”/)).toBeVisible();

  await page.keyboard.press("s");
  await page.keyboard.press("9");
  await expect(page.getByText("Kept for 3 sheets: die-back")).toBeVisible();
  await page.keyboard.press("v");
  const key = page.getByRole("group", { name: "What the keys do" });
  await expect(key.getByRole("button", { name: /^1 the spot/ })).toBeVisible();
  await page.keyboard.press("1");
  await expect(page.getByText("Kept for 3 sheets: the spot with surroundings")).toBeVisible();
  await page.keyboard.press("p");
  await page.keyboard.press("1");
  await expect(page.getByText("Kept for 3 sheets: Ditch plant")).toBeVisible();

  await trays.getByRole("button", { name: /^Ditch plant/ }).click();
  await page.getByLabel("Day").selectOption("2022-08-19");
  await expect(contact.getByRole("option")).toHaveCount(1);
  await expect(sheet).toHaveAccessibleName(/Ditch plant, the spot with surroundings, die-back$/);

  // A view that is still missing is given to one of them: the list is one shorter.
  const missing = page.getByRole("complementary", { name: "The sheet under the keyboard" });
  await sheet.click();
  const line = missing.getByText(/^die-back: \d+ of \d+ missing$/);
  await expect(line).toBeVisible();
  const before = Number(/: (\d+) of/.exec(await line.innerText())?.[1]);
  const wanted = (await missing.getByRole("list").first().getByRole("listitem").first().innerText()).trim();
  await page.keyboard.press("v");
  await page.keyboard.press("/");
  await page.getByLabel("Type a piece of its name").fill(wanted);
  await page.keyboard.press("Enter");
  await expect(missing.getByText(new RegExp(`^die-back: ${before - 1} of`)).or(missing.getByText("All wanted views"))).toBeVisible();

  await sheet.click();
  await page.keyboard.press("u");
  await expect(line).toHaveText(new RegExp(`^die-back: ${before} of`));
});
