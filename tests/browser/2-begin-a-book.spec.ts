/** A book of one's own from nothing, all through the page. */
import { emptyUrl, expect, test } from "./support/walk.js";

test.use({ baseURL: emptyUrl });
test.describe.configure({ mode: "serial" });

const faulty = `taxon,petal length (mm),flower colour
A. alba,5-3,white
A. rosea,4-6,pink
A. alba,2-3,white
`;
const sound = `taxon,petal length (mm),flower colour
A. alba,3-5(-7),white | (pink)
A. rosea,8-11,pink
`;
const csv = (name: string, text: string) => ({ name, mimeType: "text/csv", buffer: Buffer.from(text, "utf8") });

test("a fresh book invites to begin", async ({ page }) => {
  await page.goto("/");
  await expect(page.getByRole("heading", { name: "No plant is followed yet" })).toBeVisible();
  await page.getByRole("link", { name: "Begin a book" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Begin a book" })).toBeVisible();
});

test("spot, permission, person, tables, plant with its rivals", async ({ page }) => {
  await page.goto("/begin");
  const part = (name: string) =>
    page
      .getByRole("listitem")
      .filter({ has: page.getByText(name, { exact: true }) })
      .first();
  const open = async (name: string) => {
    const details = part(name).getByRole("group").first();
    if ((await details.getAttribute("open")) === null) await part(name).getByText(name, { exact: true }).click();
  };

  await open("People");
  await part("People").getByRole("button", { name: "Add a person" }).click();
  await part("People").getByLabel("Initials").fill("A.B.");
  await part("People").getByRole("button", { name: "Keep" }).click();
  await expect(part("People")).toContainText("A.B.");

  const spots = part("Spots and permissions");
  await open("Spots and permissions");
  await spots.getByRole("button", { name: "Add a spot" }).click();
  await spots.getByLabel("Name", { exact: true }).fill("Old quarry, east face");
  await spots.getByLabel("Latitude").fill("54.31764");
  await spots.getByLabel("Longitude").fill("4,21893");
  await spots.getByLabel("Known within, metres").fill("12");
  await spots.getByLabel("Publish it as").selectOption({ label: "rounded to 0.01 degree, about 1 km" });
  await spots.getByLabel("Why it is sensitive").fill("few plants, collectors about");
  await expect(spots.getByText("A stranger reads:")).toContainText("54.32, 4.22, rounded to 0.01 degree");
  await spots.getByRole("button", { name: "Keep" }).click();
  await expect(spots).toContainText("Sensitive: few plants, collectors about");
  // What was just filled in stays open: the permission goes there too.
  await expect(spots).toContainText("✓ there");

  await spots.getByRole("button", { name: "Add a permission" }).click();
  await spots.getByLabel("Given by").fill("the owner");
  await spots.getByLabel("From", { exact: true }).fill("2026-01-01");
  await spots.getByLabel("Until").fill("2025-01-01");
  await expect(spots.getByText("It would end before it begins.")).toBeVisible();
  await spots.getByLabel("Until").fill("2026-12-31");
  await spots.getByLabel("Allows", { exact: true }).fill("walk in, photograph");
  await spots.getByRole("button", { name: "Keep" }).click();
  await expect(spots).toContainText("Allows walk in, photograph");

  const tables = part("Reference table");
  await open("Reference table");
  await tables.getByLabel("Choose a file").setInputFiles(csv("faulty.csv", faulty));
  await expect(tables).toContainText("Nothing of faulty.csv was taken in");
  await expect(tables).toContainText(/row 2|line 2/i);
  await expect(tables).toContainText(/row 4|line 4/i);
  await expect(tables).toContainText("5-3");

  await tables.getByLabel("Choose a file").setInputFiles(csv("two-albas.csv", sound));
  await expect(tables).toContainText("two-albas.csv is in order: 2 taxa, 2 characters, 4 scores. Nothing has been taken in yet.");
  await tables.getByLabel("Title of the table").fill("Two invented species");
  await tables.getByRole("button", { name: "Take it in", exact: true }).click();
  await expect(tables).toContainText("two-albas.csv is in the book now");
  await tables.getByRole("listitem").filter({ hasText: "Willowherbs" }).getByRole("button", { name: "Take it into this book" }).click();
  await expect(tables.getByRole("button", { name: /^Remove Willowherbs/ })).toBeVisible();

  const plants = part("Followed plants");
  await open("Followed plants");
  await plants.getByRole("button", { name: "Follow a plant" }).click();
  await plants.getByLabel("Nickname").fill("Quarry plant");
  await plants.getByLabel("Reference table").selectOption({ label: "Two invented species" });
  await plants.getByLabel("Stems in the patch").fill("7");
  await plants.getByRole("checkbox", { name: /A\. rosea/ }).check();
  await plants.getByRole("button", { name: "Keep" }).click();
  await expect(plants).toContainText("Quarry plant");
  await expect(plants).toContainText("one look-alike to exclude");
});

test("what was begun is there after a reload, and can be taken back", async ({ page }) => {
  await page.goto("/plants");
  await expect(page.getByRole("link", { name: "Quarry plant" }).first()).toBeVisible();
  await page.goto("/shelf/places");
  await expect(page.getByText("54.32, 4.22").first()).toBeVisible();
  await page.getByRole("button", { name: /^Undo/ }).first().click();
  await page.goto("/plants");
  await expect(page.getByRole("link", { name: "Quarry plant" })).toHaveCount(0);
  await page.getByRole("button", { name: /^Redo/ }).first().click();
  await expect(page.getByRole("link", { name: "Quarry plant" }).first()).toBeVisible();
});
