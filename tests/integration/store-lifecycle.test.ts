/** Opening, beginning and restoring: what is said when something stands in the way, and that the way out works. */
import { spawn } from "node:child_process";
import { once } from "node:events";
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  openSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
  writeSync,
  closeSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { beginBook, isStoreError, openBook, restoreLatestBackup } from "../../src/store/index.js";
import { compiledChild } from "../support/compiled-child.js";
import { fixedClock, sampleContent, sampleInfo } from "../support/store-sample.js";
import { temporaryFolders } from "../support/temporary-folder.js";

const newFolder = temporaryFolders();
const program = await compiledChild("store-kill-child");
const clock = fixedClock;
const onDay = (day: number) => (): Date => new Date(Date.UTC(2022, 6, day, 10));
const database = (folder: string): string => join(folder, "stipule.sqlite");
const text = (part: string): unknown => expect.stringContaining(part);

/** A closed book with the sample in it and a backup of it; one more edit came after the backup. */
const closedBook = async (): Promise<string> => {
  const folder = join(newFolder(), "book");
  const store = await beginBook(folder, sampleInfo, { clock });
  await store.putContent(sampleContent(), { label: "sample" });
  await store.close();
  await rm(join(folder, "backups"));
  const again = await openBook(folder, { clock: onDay(3) });
  expect(again.opening.backup).not.toBeNull();
  await again.edit({ label: "after the backup" }, (edit) => edit.remove("account", "AC1"));
  await again.close();
  return folder;
};
const rm = async (path: string): Promise<void> => rmSync(path, { recursive: true, force: true });

describe("beginning a book", () => {
  it("makes the folder, keeps the stages and views given, and is no edit to take back", async () => {
    const folder = join(newFolder(), "a", "b");
    const { stages, views } = sampleContent();
    const store = await beginBook(folder, sampleInfo, { clock, stages, views });
    expect([await store.info(), await store.list("stage"), await store.list("view")]).toEqual([sampleInfo, stages, views]);
    expect(await store.undo()).toBeNull();
    expect((await store.proof()).findings).toEqual([]);
    expect(store.opening).toMatchObject({ leftoversRemoved: 0, schemaBefore: 1, schema: 1, backupFailure: null });
    await store.close();
    expect(readdirSync(folder).toSorted()).toEqual(["backups", "derived", "incoming", "originals", "stipule.lock", "stipule.sqlite"]);
  });

  it("refuses a folder that holds something else, and one that holds a book", async () => {
    const folder = newFolder();
    writeFileSync(join(folder, "letter.txt"), "dear");
    await expect(beginBook(folder, sampleInfo, { clock })).rejects.toMatchObject({
      code: "folder-not-empty",
      holdsBook: false,
      found: ["letter.txt"],
      message: text('"letter.txt"'),
    });
    expect(readdirSync(folder)).toEqual(["letter.txt"]);
    const book = await closedBook();
    await expect(beginBook(book, sampleInfo, { clock })).rejects.toMatchObject({
      code: "folder-not-empty",
      holdsBook: true,
      message: text("There is a book"),
    });
  });

  it("goes on where a beginning was killed", async () => {
    const folder = newFolder();
    for (const name of ["originals", "incoming", "backups", "derived"]) mkdirSync(join(folder, name));
    writeFileSync(join(folder, "incoming", "beginning.sqlite"), "half");
    writeFileSync(join(folder, "stipule.lock"), "");
    const store = await beginBook(folder, sampleInfo, { clock });
    expect(await store.info()).toEqual(sampleInfo);
    await store.close();
  });

  it("tells of a place where nothing can be written", async () => {
    // A path through a file cannot be written whoever one is; the rights of a folder do not hold back root.
    const file = join(newFolder(), "file");
    writeFileSync(file, "");
    await expect(beginBook(join(file, "book"), sampleInfo, { clock })).rejects.toMatchObject({
      code: "folder-not-writable",
      folder: join(file, "book"),
      message: text("Allow writing there or choose another folder"),
    });
  });

  it("keeps nothing when the information is invalid", async () => {
    const folder = join(newFolder(), "book");
    await expect(beginBook(folder, { ...sampleInfo, title: "" }, { clock })).rejects.toMatchObject({
      code: "record-invalid",
      where: "title",
    });
    expect(existsSync(database(folder))).toBe(false);
    await (await beginBook(folder, sampleInfo, { clock })).close();
  });
});

describe("opening a book", () => {
  it("says that there is none", async () => {
    const folder = newFolder();
    for (const path of [folder, join(folder, "missing")]) {
      await expect(openBook(path, { clock })).rejects.toMatchObject({
        code: "book-not-found",
        folder: path,
        message: text("begin a new book"),
      });
    }
    expect(readdirSync(folder)).toEqual([]);
  });

  it("says that it is open in this process already", async () => {
    const store = await beginBook(newFolder(), sampleInfo, { clock });
    await expect(openBook(store.folder, { clock })).rejects.toMatchObject({
      code: "book-locked",
      holder: { pid: process.pid, since: "2022-07-01T10:00:00.000Z" },
      message: text("Close it there and try again"),
    });
    await expect(restoreLatestBackup(store.folder, { clock })).rejects.toMatchObject({ code: "book-locked" });
    await store.close();
    await (await openBook(store.folder, { clock })).close();
  });

  it("says that another process has it open, and opens as soon as that one is killed", async () => {
    const folder = await closedBook();
    const child = spawn(process.execPath, [...program, folder, "1", "hold"], { stdio: ["ignore", "pipe", "inherit"] });
    let said = "";
    child.stdout.on("data", (part: Buffer) => (said += part.toString()));
    while (!said.includes('"open"')) await once(child.stdout, "data");
    const error: unknown = await openBook(folder, { clock }).catch((cause: unknown) => cause);
    expect(error).toMatchObject({ code: "book-locked", holder: { pid: child.pid } });
    const ended = once(child, "exit");
    child.kill("SIGKILL");
    await ended;
    await (await openBook(folder, { clock })).close();
  });

  it("says that nothing can be written", async () => {
    const folder = await closedBook();
    // A folder in the place of the lock file: cannot be opened for writing, root or not.
    rmSync(join(folder, "stipule.lock"));
    mkdirSync(join(folder, "stipule.lock"));
    await expect(openBook(folder, { clock })).rejects.toMatchObject({ code: "folder-not-writable", folder });
  });
});

describe("a damaged database", () => {
  const damages: readonly (readonly [string, (path: string) => void])[] = [
    [
      "random bytes in the middle",
      (path) => {
        const file = openSync(path, "r+");
        let seed = 7;
        const noise = Buffer.from(Array.from({ length: 20_000 }, () => (seed = (seed * 1_103_515_245 + 12_345) % 2 ** 31) & 0xff));
        writeSync(file, noise, 0, noise.length, 8192);
        closeSync(file);
      },
    ],
    ["cut to half", (path) => truncateSync(path, Math.floor(statSync(path).size / 2))],
    ["cut inside a page", (path) => truncateSync(path, 5000)],
    ["empty", (path) => truncateSync(path, 0)],
    ["another kind of file", (path) => writeFileSync(path, "This is a letter, not a book.\n".repeat(500))],
    ["missing", (path) => rmSync(path)],
  ];
  for (const [name, harm] of damages) {
    it(`${name}: says so, names the backup, and the backup brings the book back`, async () => {
      const folder = await closedBook();
      harm(database(folder));
      const harmed = existsSync(database(folder)) ? readFileSync(database(folder)) : null;
      const error: unknown = await openBook(folder, { clock: onDay(5) }).catch((cause: unknown) => cause);
      expect(error).toMatchObject({
        code: "book-damaged",
        folder,
        latestBackup: join(folder, "backups", "stipule-2022-07-03T10-00-00-000Z.sqlite"),
        hasWal: false,
        message: text("Restore the backup"),
      });
      expect(isStoreError(error)).toBe(true);
      // Opening changed nothing, took no backup of the damage, and left the lock free.
      expect(existsSync(database(folder)) ? readFileSync(database(folder)) : null).toEqual(harmed);
      expect(readdirSync(join(folder, "backups"))).toHaveLength(1);

      const restored = await restoreLatestBackup(folder, { clock: onDay(5) });
      expect(restored.takenAt).toBe("2022-07-03T10:00:00.000Z");
      expect(readdirSync(restored.damagedKeptIn).includes("stipule.sqlite")).toBe(harmed !== null);
      if (harmed !== null) expect(readFileSync(join(restored.damagedKeptIn, "stipule.sqlite")).equals(harmed)).toBe(true);
      const store = await openBook(folder, { clock: onDay(5) });
      expect(await store.content()).toEqual(sampleContent());
      expect((await store.undo())?.label).toBe("sample");
      await store.close();
    });
  }

  it("passes over backups that are damaged themselves, and says when none is sound", async () => {
    const folder = await closedBook();
    const sound = join(folder, "backups", "stipule-2022-07-03T10-00-00-000Z.sqlite");
    writeFileSync(join(folder, "backups", "stipule-2022-07-04T10-00-00-000Z.sqlite"), "rubbish".repeat(1000));
    truncateSync(database(folder), 6000);
    expect((await restoreLatestBackup(folder, { clock })).backup).toBe(sound);
    truncateSync(sound, 6000);
    await expect(restoreLatestBackup(folder, { clock })).rejects.toMatchObject({ code: "no-backup", damaged: { length: 2 } });
    // The restored book is still there.
    await (await openBook(folder, { clock })).close();
  });

  it("without a backup says to bring one", async () => {
    const folder = await closedBook();
    await rm(join(folder, "backups"));
    truncateSync(database(folder), 6000);
    await expect(openBook(folder, { clock })).rejects.toMatchObject({
      code: "book-damaged",
      latestBackup: null,
      message: text("copy one from elsewhere into backups/"),
    });
  });

  it("that comes while the book is open is told by the proof, and by the next opening", async () => {
    const folder = await closedBook();
    const store = await openBook(folder, { clock });
    const file = openSync(database(folder), "r+");
    const size = statSync(database(folder)).size;
    writeSync(file, Buffer.alloc(size - 8192, 0xee), 0, size - 8192, 8192);
    closeSync(file);
    expect((await store.proof()).findings).toContainEqual(expect.objectContaining({ code: "database-damaged", severity: "damage" }));
    await store.close().catch(() => undefined);
    await expect(openBook(folder, { clock })).rejects.toMatchObject({ code: "book-damaged" });
  });
});

describe("backups", () => {
  it("are taken when the last one is a day old; the last five are kept", async () => {
    const folder = await closedBook();
    const taken: (string | null)[] = [];
    for (const day of [3, 4, 4, 5, 6, 7, 8, 9]) {
      const store = await openBook(folder, { clock: onDay(day) });
      taken.push(store.opening.backup && store.opening.backup.slice(-31, -21));
      await store.close();
    }
    expect(taken.map((one) => one !== null)).toEqual([false, true, false, true, true, true, true, true]);
    expect(
      readdirSync(join(folder, "backups"))
        .map((name) => name.slice(8, 18))
        .toSorted(),
    ).toEqual(["2022-07-05", "2022-07-06", "2022-07-07", "2022-07-08", "2022-07-09"]);
  });

  it("that cannot be taken do not keep the book shut, nor does one from a clock set wrong hold up others", async () => {
    const folder = await closedBook();
    copyFileSync(database(folder), join(folder, "backups", "stipule-2031-01-01T00-00-00-000Z.sqlite"));
    // A folder in the place of the new backup: it cannot be given its name.
    mkdirSync(join(folder, "backups", "stipule-2022-07-20T10-00-00-000Z.sqlite", "in-the-way"), { recursive: true });
    const blocked = await openBook(folder, { clock: onDay(20) });
    expect(blocked.opening.backup).toBeNull();
    expect(blocked.opening.backupFailure).toMatch(/directory|EISDIR|ENOTEMPTY|EEXIST/i);
    expect(await blocked.info()).toEqual(sampleContent().info);
    await blocked.close();
    expect(readdirSync(join(folder, "backups")).filter((name) => name.endsWith(".part"))).toEqual([]);
    const free = await openBook(folder, { clock: onDay(21) });
    expect(free.opening.backup).toContain("stipule-2022-07-21");
    await free.close();
  });

  it("a copy taken while the book is in use holds what was acknowledged, and is a book of its own", async () => {
    const folder = await closedBook();
    const store = await openBook(folder, { clock });
    const other = newFolder();
    const edits = Promise.all(
      Array.from({ length: 10 }, (_, index) =>
        store.edit({ label: `e${index}` }, (edit) => edit.put("person", { id: `N${index}` as never, initials: "N", role: "" })),
      ),
    );
    await edits;
    await store.backupTo(join(other, "copy.sqlite"));
    await expect(store.backupTo(join(database(folder), "copy.sqlite"))).rejects.toMatchObject({ code: "folder-not-writable" });
    copyFileSync(join(other, "copy.sqlite"), database(other));
    const copy = await openBook(other, { clock });
    expect(await copy.content()).toEqual(await store.content());
    await copy.close();
    await store.close();
  });
});
