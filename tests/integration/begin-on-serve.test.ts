/** Serving a folder that holds no book yet begins one; a folder with other things in it is left alone. */
import { mkdir, readdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { openOrBeginBook } from "../../src/app/index.js";
import { temporaryFolders } from "../support/temporary-folder.js";

const newFolder = temporaryFolders();
const options = { clock: () => new Date("2026-03-01T10:00:00Z"), programRoot: join(import.meta.dirname, "../..") };

test("begins a book in a folder that does not exist, and opens it the second time", async () => {
  const folder = join(newFolder(), "my-year");
  const first = await openOrBeginBook(folder, { title: "My year", zone: "Europe/Vienna" }, options);
  expect(first.begun).toBe(true);
  await first.bench.close();
  const second = await openOrBeginBook(folder, { title: "another title", zone: "Europe/Vienna" }, options);
  expect(second.begun).toBe(false);
  expect((await second.bench.workbench.store.info()).title).toBe("My year");
  await second.bench.close();
});

test("leaves a folder with other things in it alone", async () => {
  const folder = join(newFolder(), "letters");
  await mkdir(folder);
  await writeFile(join(folder, "letter.txt"), "dear R.O.");
  await expect(openOrBeginBook(folder, { title: "My year" }, options)).rejects.toMatchObject({ code: "book-not-found" });
  expect(await readdir(folder)).toEqual(["letter.txt"]);
});
