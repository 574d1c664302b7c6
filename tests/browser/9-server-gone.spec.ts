/** The server dies while the page is open: the page says so, keeps what was typed, and goes on when it runs again. */
import { mkdtemp } from "node:fs/promises";
import path from "node:path";
import { expect, home, test } from "./support/walk.js";
import { startServer } from "./support/server.js";

test("what was typed outlives the server", async ({ page }) => {
  const parent = await mkdtemp(path.join(home, "gone-"));
  const folder = path.join(parent, "book");
  let server = await startServer(folder, { home });
  try {
    await page.goto(`${server.url}/begin`);
    const people = page
      .getByRole("listitem")
      .filter({ has: page.getByText("People", { exact: true }) })
      .first();
    await expect(page.getByRole("heading", { level: 1, name: "Begin a book" })).toBeVisible();
    if (!(await people.getByRole("button", { name: "Add a person" }).isVisible()))
      await people.getByText("People", { exact: true }).click();
    await people.getByRole("button", { name: "Add a person" }).click();
    await people.getByLabel("Initials").fill("A.B.");

    await server.kill();
    await people.getByRole("button", { name: "Keep" }).click();
    const alert = page.getByRole("alert").filter({ hasText: "Stipule does not answer" });
    await expect(alert.first()).toBeVisible();
    await expect(alert.first()).toContainText("start it again");
    await expect(page.getByText("Not kept yet: A.B.")).toBeVisible();

    server = await startServer(folder, { home, port: server.port });
    await alert.first().getByRole("button", { name: "Try again" }).click();
    await expect(page.getByText("Kept: A.B.")).toBeVisible();
    await page.reload();
    await page.getByText("People", { exact: true }).first().click();
    await expect(page.getByText("A.B.").first()).toBeVisible();
  } finally {
    await server.stop();
  }
});
