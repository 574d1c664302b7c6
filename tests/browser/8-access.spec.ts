/** Every place: no accessibility fault, no sideways scroll, usable by keyboard only and at 200 % zoom. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { demoUrl, expect, test } from "./support/walk.js";

test.use({ baseURL: demoUrl });
// A place with hundreds of drawn parts takes the checker its time on a busy machine.
test.describe.configure({ timeout: 240_000 });

const places = [
  "/",
  "/plants",
  "/plants/P1",
  "/plants/P1/case",
  "/plants/P5/case?slip=new",
  "/species",
  "/species/willowherbs",
  "/species/willowherbs/apart?taxa=tetragonum,obscurum",
  "/species/willowherbs/page/obscurum",
  "/bring",
  "/sorting",
  "/outing",
  "/outing/V9?plant=P2",
  "/begin",
  "/shelf",
  "/shelf/places",
  "/shelf/history",
] as const;

const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Faults as lines, so that a failure says what and where. */
const axe = async (page: Page, where: string, rules?: readonly string[]): Promise<readonly string[]> => {
  // Styles come from this server alone, so there is nothing to fetch beforehand.
  const builder = new AxeBuilder({ page }).options({ preload: false });
  const { violations } = await (
    rules === undefined
      ? builder.withTags(["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"])
      : builder.withRules([...rules])
  ).analyze();
  return violations.map(({ id, help, nodes }) =>
    [`${where}: ${id}: ${help}`, ...nodes.slice(0, 3).map((node) => `${node.target.join(" ")}: ${node.failureSummary ?? ""}`)].join("\n"),
  );
};

for (const place of places) {
  test(`no fault at ${place}`, async ({ page }) => {
    const faults: string[] = [];
    await page.addInitScript(() => localStorage.setItem("stipule.look", "paper"));
    await page.goto(place);
    await expect(page.getByRole("main").getByRole("heading").first()).toBeVisible();
    await expect(page.getByText("Reading the book …")).toHaveCount(0);
    faults.push(...(await axe(page, "paper, 1280 px")));
    await page.setViewportSize({ width: 390, height: 844 });
    faults.push(...(await axe(page, "paper, 390 px")));
    for (const look of ["night", "field"]) {
      await page.getByRole("combobox", { name: "Look", exact: true }).selectOption(look);
      faults.push(...(await axe(page, `${look}, 390 px`, ["color-contrast", "target-size", "link-in-text-block"])));
      if ((await sideways(page)) > 0) faults.push(`${look}, 390 px: ${await sideways(page)} px too wide`);
    }
    await page.getByRole("combobox", { name: "Look", exact: true }).selectOption("paper");
    for (const width of [390, 640]) {
      await page.setViewportSize({ width, height: 844 });
      if ((await sideways(page)) > 0) faults.push(`paper, ${width} px: ${await sideways(page)} px too wide`);
    }
    expect(faults).toEqual([]);
  });
}

/** Tab until an element with this name has the focus. */
const tabTo = async (page: Page, name: string): Promise<void> => {
  const focused = () =>
    page.evaluate(() => {
      const at = document.activeElement;
      return at?.getAttribute("aria-label") ?? at?.textContent ?? "";
    });
  for (let i = 0; i < 60; i += 1) {
    await page.keyboard.press("Tab");
    if ((await focused()).trim().startsWith(name)) return;
  }
  throw new Error(`Tab never reached “${name}”.`);
};

test("from the front page to a case by keyboard only, the focus always visible", async ({ page }) => {
  await page.goto("/");
  await expect(page.getByRole("heading", { name: "The year 2022" })).toBeVisible();
  await page.keyboard.press("Tab");
  await expect(page.getByRole("link", { name: "Skip to the content" })).toBeFocused();
  await expect(page.getByRole("link", { name: "Skip to the content" })).toBeInViewport();
  await page.keyboard.press("Enter");
  await tabTo(page, "Ditch plant");
  const outline = await page.evaluate(() => {
    const style = document.activeElement === null ? undefined : getComputedStyle(document.activeElement);
    return { style: style?.outlineStyle ?? "none", width: Number.parseFloat(style?.outlineWidth ?? "0") };
  });
  expect(outline.style).not.toBe("none");
  expect(outline.width).toBeGreaterThanOrEqual(2);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 1, name: "Ditch plant" })).toBeVisible();
  await tabTo(page, "Open the case");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 1 })).toContainText("short-fruited willowherb");
});

test("at 200 % zoom nothing is lost: navigation, reading day, case, slip", async ({ page }) => {
  await page.setViewportSize({ width: 640, height: 450 });
  await page.goto("/plants/P1/case");
  for (const name of ["Year", "Plants", "Species", "Shelf"])
    await expect(page.getByRole("navigation", { name: "Places" }).getByRole("link", { name })).toBeVisible();
  await page.getByLabel("Read the book as it stood on this day").fill("2022-06-19");
  await expect(page.getByRole("heading", { level: 1 })).toContainText("One of two");
  await page.getByRole("button", { name: "Write a slip" }).click();
  const keep = page.getByRole("button", { name: "Keep the slip" });
  await keep.scrollIntoViewIfNeeded();
  await expect(keep).toBeInViewport();
});
