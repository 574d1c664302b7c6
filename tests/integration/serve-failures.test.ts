/** `stipule serve` when something stands in the way: exit code 1, one plain message with a way out, nothing changed. */
import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { once } from "node:events";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, truncateSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import type { Kysely } from "kysely";
import { beforeAll, describe, expect, it } from "vitest";
import { beginBook, openBook } from "../../src/store/index.js";
import { migrations } from "../../src/store/migrations/migrate.js";
import { compiledChild } from "../support/compiled-child.js";
import { commandLine, jsonOf } from "../support/run-cli.js";
import { fixedClock, sampleContent, sampleInfo } from "../support/store-sample.js";
import { temporaryFolders } from "../support/temporary-folder.js";

const newFolder = temporaryFolders();
const holder = await compiledChild("store-kill-child");
const home = newFolder();
const stipule = commandLine(home);
/** A sound book with a backup, made once; each test copies it. */
const sound = join(home, "sound");
const newBook = (): string => {
  const folder = join(newFolder(), "book");
  cpSync(sound, folder, { recursive: true });
  return folder;
};
beforeAll(async () => {
  const store = await beginBook(sound, sampleInfo, { clock: fixedClock });
  await store.putContent(sampleContent(), { label: "sample" });
  await store.close();
  rmSync(join(sound, "backups"), { recursive: true });
  await (await openBook(sound, { clock: () => new Date("2022-07-03T10:00:00Z") })).close();
  expect(readdirSync(join(sound, "backups"))).toHaveLength(1);
});

/** Files and their hashes, but for the lock and what SQLite lays beside a database it has read: shared memory and an empty log. */
const inside = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter(
      (name) =>
        !/\.lock$|-shm$/.test(name) &&
        (!name.endsWith("-wal") || statSync(join(folder, name)).size > 0) &&
        statSync(join(folder, name)).isFile(),
    )
    .map(
      (name) =>
        `${name} ${createHash("sha256")
          .update(readFileSync(join(folder, name)))
          .digest("hex")}`,
    )
    .toSorted();

/** Serves in vain; the message stands alone on the error stream and tells of no line of our code. */
const failing = async (code: string, ...more: readonly string[]): Promise<string> => {
  const ended = await stipule("serve", "--no-open", ...more);
  expect([ended.rc, ended.out]).toEqual([1, ""]);
  expect(ended.err).not.toMatch(/^\s+at |node:|Error:/m);
  expect(ended.err.trim().split("\n")).toHaveLength(1);
  const asData = await stipule("serve", "--no-open", "--json", ...more);
  expect([asData.rc, jsonOf<{ error: { code: string } }>(asData).error.code]).toEqual([1, code]);
  return ended.err;
};
/** A port that is taken while `deed` runs. */
const withPortTaken = async <T>(deed: (port: string) => Promise<T>): Promise<T> => {
  const socket = createServer().listen(0, "127.0.0.1");
  await once(socket, "listening");
  try {
    return await deed(String((socket.address() as { port: number }).port));
  } finally {
    socket.close();
  }
};

describe("stipule serve", () => {
  it("names the port that is taken, and leaves the book free", async () => {
    const book = newBook();
    await withPortTaken(async (port) => {
      const said = await failing("port-taken", "--book", book, "--port", port);
      expect(said).toContain(`Port ${port} is in use`);
      expect(said).toContain("--port");
    });
    await (await openBook(book, { clock: fixedClock })).close();
  });

  it("says where nothing can be written, in a new folder and in one with a book", async () => {
    // Not by the rights of a folder: those do not hold back root.
    const file = join(newFolder(), "a-file");
    writeFileSync(file, "");
    const said = await failing("folder-not-writable", "--book", join(file, "book"));
    expect(said).toContain(join(file, "book"));
    expect(said).toContain("choose another folder");
    expect(await failing("book-not-found", "--book", file)).toContain("Choose the folder");
    expect(readFileSync(file, "utf8")).toBe("");
    const book = newBook();
    rmSync(join(book, "stipule.lock"), { force: true });
    mkdirSync(join(book, "stipule.lock"));
    const before = inside(book);
    expect(await failing("folder-not-writable", "--book", book)).toContain("choose another folder");
    expect(inside(book)).toEqual(before);
  });

  it.skipIf(process.getuid?.() === 0)("says so where the rights of the folder forbid it", async () => {
    const { chmodSync } = await import("node:fs");
    const parent = newFolder();
    chmodSync(parent, 0o500);
    expect(await failing("folder-not-writable", "--book", join(parent, "book"))).toContain("choose another folder");
    chmodSync(parent, 0o700);
  });

  it("says that a database is damaged, names the backup; `restore` brings the book back", async () => {
    const book = newBook();
    truncateSync(join(book, "stipule.sqlite"), 20_000);
    const before = inside(book);
    const said = await failing("book-damaged", "--book", book);
    expect(said).toContain("is damaged");
    expect(said).toContain(join(book, "backups", "stipule-2022-07-03T10-00-00-000Z.sqlite"));
    expect(inside(book)).toEqual(before);
    expect((await stipule("restore", "--book", book)).rc).toBe(0);
    // A book that opens is not taken back to its backup by mistake.
    const again = await stipule("restore", "--book", book);
    expect(again.rc).toBe(1);
    expect(JSON.stringify(again)).toContain("--even-if-sound");
    const store = await openBook(book, { clock: fixedClock });
    expect(await store.content()).toEqual(sampleContent());
    await store.close();
  });

  it("says who has the book open, and opens it once that one is gone", async () => {
    const book = newBook();
    const child = spawn(process.execPath, [...holder, book, "1", "hold"], { stdio: ["ignore", "pipe", "inherit"] });
    let said = "";
    child.stdout.on("data", (part: Buffer) => (said += part.toString()));
    while (!said.includes('"open"')) await once(child.stdout, "data");
    try {
      const told = await failing("book-locked", "--book", book);
      expect(told).toContain(`process ${child.pid}`);
      expect(told).toContain("Close it there and try again");
    } finally {
      const ended = once(child, "exit");
      child.kill("SIGKILL");
      await ended;
    }
    expect((await stipule("plants", "--book", book)).rc).toBe(0);
  });

  it("asks for an update where the book is of a newer schema, and does not touch it", async () => {
    const book = newBook();
    const tomorrow = {
      number: migrations.length + 1,
      name: "of-tomorrow",
      up: async (db: Kysely<unknown>): Promise<void> => {
        await db.schema.alterTable("person").addColumn("of_tomorrow", "text").execute();
      },
    };
    await (await openBook(book, { clock: fixedClock, known: [...migrations, tomorrow] })).close();
    const before = inside(book);
    expect(await failing("book-too-new", "--book", book)).toMatch(/newer version.*Update Stipule/);
    expect(inside(book)).toEqual(before);
  });

  it("leaves a folder with other things in it alone", async () => {
    const folder = newFolder();
    writeFileSync(join(folder, "letter.txt"), "dear");
    expect(await failing("book-not-found", "--book", folder)).toContain("begin a new book");
    expect(readdirSync(folder)).toEqual(["letter.txt"]);
    expect(existsSync(join(folder, "stipule.sqlite"))).toBe(false);
  });
});
