/** Two and six taxa side by side; a slip written and taken back. */
import { demoUrl, expect, test } from "./support/walk.js";

test.use({ baseURL: demoUrl });

test("two taxa, chosen on the table's page", async ({ page }) => {
  await page.goto("/species");
  await page.getByRole("link", { name: "Willowherbs of Eastmere (invented county)" }).click();
  await page.getByRole("checkbox", { name: /square-stalked willowherb/ }).check();
  await page.getByRole("checkbox", { name: /short-fruited willowherb/ }).check();
  await page.getByRole("link", { name: "See 2 side by side" }).click();
  const region = page.getByRole("region", { name: "Characters side by side" });
  await expect(region.getByRole("columnheader", { name: /square-stalked/ })).toBeVisible();
  const winter = region.getByRole("row", { name: /How it spends the winter/ });
  await expect(winter).toContainText("leafy rosettes");
  await expect(winter).toContainText("long leafy runners");
  const capsule = region.getByRole("row", { name: /Capsule length/ });
  await expect(capsule).toContainText("(55–)65–85(–110) mm");
  await expect(capsule).toContainText("(30–)40–60(–70) mm");
});

test("six taxa, and not a seventh", async ({ page }) => {
  await page.goto("/species/willowherbs/apart?taxa=tetragonum,obscurum,ciliatum,montanum,palustre");
  const choice = page.getByRole("group", { name: "Two to six taxa" });
  await choice.getByRole("checkbox", { name: "Epilobium roseum" }).check();
  await expect(page.getByRole("region", { name: "Characters side by side" }).getByRole("columnheader")).toHaveCount(7);
  await expect(choice.getByRole("checkbox", { name: "Epilobium hirsutum" })).toBeDisabled();
  await expect(page.getByText("Usual differences: the usual values of at least two do not meet")).toBeVisible();
});

test("a slip is kept with name, reason and person, and undone", async ({ page }) => {
  await page.goto("/plants/P2/case");
  const slips = page.getByRole("region", { name: "Slips" });
  // The headline is there before the slips are counted.
  await expect(page.getByRole("heading", { level: 1 })).toContainText("American willowherb");
  const before = await slips.getByRole("listitem").count();
  await page.getByRole("button", { name: "Write a slip" }).click();
  const form = page.getByRole("form", { name: "Write a slip" });
  await form.getByRole("button", { name: "Keep the slip" }).click();
  await expect(form.getByText("This is wanted.").first()).toBeVisible();
  await form.getByRole("textbox", { name: "Why" }).fill("glands on the capsules, seeds with a row of ridges");
  await form.getByRole("button", { name: "Keep the slip" }).click();
  await expect(slips.getByRole("listitem")).toHaveCount(before + 1);
  await expect(slips).toContainText("glands on the capsules, seeds with a row of ridges");
  await page.getByRole("button", { name: /^Undo/ }).first().click();
  await expect(slips.getByRole("listitem")).toHaveCount(before);
});
