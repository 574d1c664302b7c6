/** The first ten minutes of somebody who was told nothing: the front page, the plants, their boards and cases. */
import { demoUrl, expect, test } from "./support/walk.js";

test.use({ baseURL: demoUrl });

test("the front page says that it is invented, and which plants are settled, open, a hybrid question", async ({ page }) => {
  await page.goto("/");
  const notice = page.getByRole("note", { name: "Please note" });
  await expect(notice).toBeInViewport();
  await expect(notice).toContainText("ILLUSTRATIVE");
  await expect(notice).toContainText("not for real identification");

  const standing = page.getByRole("region", { name: "How each plant stands" });
  const line = (nick: string) => standing.getByRole("listitem").filter({ has: page.getByRole("link", { name: nick }) });
  await expect(line("Ditch plant")).toContainText("Settled: short-fruited willowherb");
  await expect(line("Yard plant")).toContainText("Settled: American willowherb");
  await expect(line("Ride plant")).toContainText("Settled: broad-leaved willowherb");
  await expect(line("Fen plant")).toContainText("Settled: marsh willowherb");
  await expect(line("Bank plant")).toContainText("hybrid question");
  await expect(line("Bank plant")).toContainText("None of 10 fits");
  await expect(line("Bridge plant")).toContainText("One of two: square-stalked willowherb or short-fruited willowherb");
  // A name with its author ends in one full stop, whether or not the author is shortened.
  await expect(standing).not.toContainText("..");
  await expect(page.getByText("4 plants are settled:")).toContainText("One plant stays open: Bridge plant.");
  await expect(page.getByRole("region", { name: "No longer this year" })).toContainText("mown on 20 July. Next year before 18 July.");

  await page.getByRole("button", { name: "Read it as a table" }).click();
  await expect(page.getByRole("table", { name: "The year 2022" })).toContainText("mown");
});

test("every plant page is one step from the front page and shows its board", async ({ page }) => {
  await page.goto("/");
  const nicks = ["Ditch plant", "Yard plant", "Ride plant", "Fen plant", "Bank plant", "Bridge plant"];
  for (const nick of nicks) {
    await page.getByRole("region", { name: "How each plant stands" }).getByRole("link", { name: nick }).click();
    await expect(page.getByRole("heading", { level: 1, name: nick })).toBeVisible();
    await expect(page.getByRole("grid", { name: "Evidence board" })).toBeVisible();
    await page.getByRole("navigation", { name: "Places" }).getByRole("link", { name: "Year" }).click();
  }
});

const pair = [
  ["2022-05-29", "Three are left: square-stalked willowherb, short-fruited willowherb or American willowherb.", "Gland-tipped hairs"],
  ["2022-06-19", "One of two: square-stalked willowherb or short-fruited willowherb.", "How it spends the winter"],
  ["2022-08-21", "Only short-fruited willowherb, Epilobium obscurum Schreb. is left, but it is not settled.", "How it spends the winter"],
] as const;

test("the hard pair through the year: three left, two left, one left but not settled, settled", async ({ page }) => {
  await page.goto("/plants/P1/case");
  const day = page.getByLabel("Read the book as it stood on this day");
  const decide = page.getByRole("region", { name: "What would decide" });
  for (const [date, headline, check] of pair) {
    await day.fill(date);
    await expect(page.getByRole("heading", { level: 1 })).toHaveText(headline);
    await expect(decide).toContainText(check);
  }
  await expect(page.getByText("square-stalked willowherb by one witness only: capsule length when full-grown")).toBeVisible();

  await day.fill("2022-09-18");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Settled: short-fruited willowherb, Epilobium obscurum Schreb.");
  await expect(page.getByText("Every rival is out by 2 or more independent witnesses")).toBeVisible();
  await expect(decide).toContainText("Nothing more is needed");

  const slip = page.getByRole("region", { name: "Slips" }).getByRole("listitem").filter({ hasText: "R.O." });
  await expect(slip).toContainText("Epilobium cf. tetragonum");
  await expect(slip).toContainText("four stem lines; no glands seen on the stem");
  await expect(slip).toContainText("overturned");

  // Leaf length, width, their ratio and the shape of the leaf are one witness, with each reading linked once.
  const ratio = page
    .getByRole("region", { name: "Stands", exact: true })
    .getByRole("listitem")
    .filter({ hasText: "one witness together with" })
    .filter({ hasText: "divided by width" });
  const links = await ratio.getByRole("link").evaluateAll((all) => all.map((link) => link.getAttribute("href")));
  expect(links.length).toBeGreaterThan(1);
  expect(new Set(links).size).toBe(links.length);
});

test("what next, and when: the mown plant waits for next year", async ({ page }) => {
  await page.goto("/plants/P6/case?upTo=2022-07-06");
  const decide = page.getByRole("region", { name: "What would decide" });
  await expect(decide).toContainText("How it spends the winter");
  await expect(decide).toContainText("can be seen 1 August to 31 March");
  await expect(decide).toContainText("Capsule length when full-grown");
  await expect(decide).toContainText("a ruler, or a photograph with the scale card");
  await expect(decide).not.toContainText("Not this year");

  await page.getByLabel("Read the book as it stood on this day").fill("2022-07-27");
  await expect(decide).toContainText("Not this year: mown on 20 July. Next year before 18 July.");
  await expect(page.getByText("This year it cannot be decided")).toBeVisible();
});

test("no species fits: the case names none, and a plain name is refused without a reason", async ({ page }) => {
  await page.goto("/plants/P5/case?upTo=2022-11-06");
  const headline = page.getByRole("heading", { level: 1 });
  await expect(headline).toContainText("None of 10 fits");
  await expect(headline).not.toContainText("Settled");
  await expect(page.getByRole("heading", { name: "Stands", exact: true })).toHaveCount(0);
  const question = page.getByRole("region", { name: "No name fits alone" });
  await expect(question).toContainText("14, 8, 17 and 11 %");
  await expect(question).toContainText("Gland-tipped hairs: on the upper stem");
  const pairs = question.getByRole("list").last().getByRole("listitem");
  await expect(pairs.first()).toContainText("short-fruited willowherb × American willowherb");
  await expect(pairs.first()).toContainText("17");
  await expect(pairs.nth(1)).toContainText("26");

  await page.getByRole("button", { name: "Write a slip" }).click();
  const form = page.getByRole("form", { name: "Write a slip" });
  await form.getByLabel("Name", { exact: true }).selectOption({ label: "Epilobium obscurum" });
  await form.getByLabel("By", { exact: true }).fill("T.M.W.");
  await form.getByRole("textbox", { name: "Why" }).fill("short");
  await form.getByRole("button", { name: "Keep the slip" }).click();
  await expect(form.getByRole("alert").or(form.locator("[aria-invalid=true]")).first()).toBeVisible();
  await expect(page.getByRole("region", { name: "Slips" }).getByRole("listitem")).toHaveCount(1);

  await form.getByLabel("How sure").selectOption({ label: "? (a question)" });
  await form.getByRole("button", { name: "Keep the slip" }).click();
  await expect(page.getByRole("region", { name: "Slips" }).getByRole("listitem")).toHaveCount(2);
  await expect(headline).toContainText("None of 10 fits");
  await page.getByRole("button", { name: /^Undo/ }).first().click();
  await expect(page.getByRole("region", { name: "Slips" }).getByRole("listitem")).toHaveCount(1);
});
