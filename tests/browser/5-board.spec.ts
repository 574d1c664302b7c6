/** The evidence board by keyboard, and the way from a tile to its evidence and back. */
import { demoUrl, expect, test } from "./support/walk.js";

test.use({ baseURL: demoUrl });

test("arrows move over the board, Enter opens what lies behind a tile, Escape leads back", async ({ page }) => {
  await page.goto("/plants/P1");
  const board = page.getByRole("grid", { name: "Evidence board" });
  const tile = (name: string) => board.getByRole("button", { name });
  const first = tile("Habit, stem lengthening: seen, erect");
  await first.focus();
  await page.keyboard.press("ArrowRight");
  await expect(tile("Habit, buds: not looked; can be seen 1 June to 31 July, no tool")).toBeFocused();
  await page.keyboard.press("Enter");
  const panel = page.getByRole("complementary", { name: "Behind the tile: Habit" });
  await expect(panel).toContainText("not looked, can be seen");
  await expect(panel).toContainText("can be seen 1 June to 31 July, no tool");
  await page.keyboard.press("Escape");
  await expect(panel).toHaveCount(0);

  await page.keyboard.press("Home");
  await expect(tile("Habit, overwintering: cannot be seen in this stage")).toBeFocused();
  await page.keyboard.press("End");
  await expect(tile("Habit, die-back: cannot be seen in this stage")).toBeFocused();
});

test("a tile that was measured shows its readings and photographs", async ({ page }) => {
  await page.goto("/plants/P1");
  await page
    .getByRole("grid", { name: "Evidence board" })
    .getByRole("button", { name: /^Capsule length when full-grown, green fruit: seen/ })
    .click();
  const panel = page.getByRole("complementary", { name: "Behind the tile: Capsule length when full-grown" });
  await expect(panel).toContainText("21 August 2022");
  await expect(panel).toContainText("n = ");
  await expect(panel.getByRole("img").first()).toBeVisible();
  await panel
    .getByRole("button", { name: /photograph|Ditch plant/i })
    .first()
    .click();
  await expect(page.getByRole("dialog")).toBeVisible();
  await expect(page.getByRole("dialog").getByRole("img")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.getByRole("dialog")).toHaveCount(0);
});
