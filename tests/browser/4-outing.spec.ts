/** An outing recorded through the page: stages, looks, readings, leaving out; a reload keeps all; undo takes back. */
import { demoUrl, expect, test } from "./support/walk.js";

test.use({ baseURL: demoUrl });

test("record an outing, reload, undo", async ({ page }) => {
  await page.goto("/outing");
  await page.getByRole("button", { name: "New outing" }).click();
  await page.getByLabel("Day", { exact: true }).fill("2022-11-20");
  await page.getByLabel("Weather").fill("5 C, fog");
  await page.getByRole("checkbox", { name: "T.M.W." }).check();
  await page.getByLabel("What it is for").fill("capsules that are left");
  await page.getByRole("button", { name: "Begin the outing" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "20 November 2022" })).toBeVisible();

  await page
    .getByRole("navigation", { name: "Plants of this outing" })
    .getByRole("button", { name: /^Ditch plant/ })
    .click();
  await expect(page.getByRole("heading", { level: 2, name: "Ditch plant" })).toBeVisible();
  await page.getByRole("group", { name: "ripe, shedding" }).getByRole("button", { name: "yes" }).click();
  await expect(page.getByText("Kept: ripe, shedding: yes")).toBeVisible();

  const characters = page.getByRole("navigation", { name: "Characters" });
  const onlyDue = characters.getByRole("checkbox", { name: /^Only these/ });
  await onlyDue.uncheck();
  const open = async (name: string) => {
    await characters.getByRole("button", { name: new RegExp(name) }).click();
    const card = page.getByRole("article", { name: `${name}?` });
    await expect(card).toBeVisible();
    return card;
  };

  let card = await open("Gland-tipped hairs");
  const pressed = (name: string | RegExp) => card.getByRole("button", { name, pressed: true });
  await card.getByRole("button", { name: /^on the upper stem/ }).click();
  await expect(pressed(/^on the upper stem/)).toBeVisible();
  await card.getByRole("button", { name: "cannot tell" }).click();
  await expect(pressed("cannot tell")).toBeVisible();
  await card.getByRole("button", { name: "looked, not there" }).click();
  await expect(pressed("looked, not there")).toBeVisible();
  await expect(card.getByText("How many did you look at?")).toBeVisible();
  await card.getByLabel("Lens").selectOption("x20");
  await card.getByLabel("Looked at how many").fill("7");
  await card.getByLabel("Note", { exact: true }).focus();
  await expect(card.getByText("How many did you look at?")).toHaveCount(0);

  card = await open("Stigma");
  await card.getByRole("button", { name: "cannot tell" }).click();
  await expect(pressed("cannot tell")).toBeVisible();
  card = await open("Petal colour");
  // Skipping writes nothing: not looked.
  await card.getByRole("button", { name: "skip (not looked)" }).click();

  card = await open("Capsule length when full-grown");
  const series = card.getByLabel("Readings in mm");
  await series.fill("43 45 51.5 mm");
  await expect(card.getByRole("status")).toContainText("43 45 51.5 mm (n = 3)");
  await card.getByRole("button", { name: "Keep the series" }).click();
  await expect(card.getByText(/^43\s+45\s+51\.5 mm/)).toBeVisible();
  await series.fill("5.1");
  const question = card.getByRole("alert");
  await expect(question).toContainText(/were these cm|centimet/);
  await expect(card.getByRole("button", { name: "Keep the series" })).toBeDisabled();
  await question.getByRole("button", { name: /^Yes, cm: write 51 mm/ }).click();
  await expect(series).toHaveValue("51");
  await card.getByRole("button", { name: "Keep the series" }).click();
  await expect(series).toHaveValue("");

  await card.getByRole("button", { name: "Leave out" }).first().click();
  await page.getByRole("dialog").getByRole("button", { name: "damaged, grazed or mown" }).click();
  await expect(card.getByText("left out: damaged, grazed or mown")).toBeVisible();

  await page.reload();
  await expect(page.getByRole("heading", { level: 2, name: "Ditch plant" })).toBeVisible();
  await expect(page.getByText("Stage: ripe, shedding")).toBeVisible();
  card = await open("Capsule length when full-grown");
  await expect(card.getByText(/^43\s+45\s+51\.5 mm/)).toBeVisible();
  await expect(card.getByText(/^51 mm/)).toBeVisible();
  await expect(card.getByText("left out: damaged, grazed or mown")).toBeVisible();
  card = await open("Gland-tipped hairs");
  await expect(pressed("looked, not there")).toBeVisible();
  await expect(card.getByLabel("Lens")).toHaveValue("x20");
  await expect(card.getByLabel("Looked at how many")).toHaveValue("7");
  card = await open("Stigma");
  await expect(pressed("cannot tell")).toBeVisible();
  await expect(characters.getByRole("button", { name: /Petal colour.*noted/ })).toHaveCount(0);

  await page.getByRole("button", { name: /^Undo: / }).click();
  card = await open("Capsule length when full-grown");
  await expect(card.getByText("left out: damaged, grazed or mown")).toHaveCount(0);
  await expect(card.getByText(/^51 mm/)).toBeVisible();
});
