import { spawn } from "node:child_process";
import { createServer } from "node:net";
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { programRoot } from "../support/demo-bench.js";
import { commandLine, jsonOf as data } from "../support/run-cli.js";

let home = "";
let book = "";
let stipule: ReturnType<typeof commandLine>;

/** Starts the command line as a process of its own. */
const start = (...args: readonly string[]) =>
  spawn(process.execPath, ["--import", "tsx", join(programRoot, "tests/support/cli-entry.ts"), ...args], {
    cwd: programRoot,
    env: { PATH: process.env["PATH"] ?? "", HOME: home, STIPULE_HOME: home, TZ: "UTC" },
  });

beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), "stipule-cli-"));
  book = join(home, "hobbin-carr");
  stipule = commandLine(home);
  expect(await stipule("begin", "--demo", book)).toMatchObject({ rc: 0, err: "" });
}, 120_000);
afterAll(() => rm(home, { recursive: true, force: true }));

describe("verbs on the demo year", () => {
  it("reads how P1 stands on a day", async () => {
    const may = data<{ standing: { word: string }; rivals: { left: boolean }[] }>(
      await stipule("stand", "P1", "--until", "2022-05-29", "--json"),
    );
    // Three are left: the leading one and two rivals.
    expect(may.rivals.filter((rival) => rival.left)).toHaveLength(2);
    const autumn = data<{ standing: { settled: boolean } }>(await stipule("--json", "stand", "Ditch plant", "--until", "2022-09-18"));
    expect(autumn.standing.settled).toBe(true);
  });

  it("keeps a look, shows it in the history, takes it back", async () => {
    const args = ["look", "P1", "glands", "--not-there", "--lens", "x20", "--n", "5", "--id", "look-cli"];
    const dry = data<{ dry: boolean; edits: unknown[] }>(await stipule(...args, "--dry", "--json"));
    expect([dry.dry, dry.edits.length]).toEqual([true, 1]);
    const kept = data<{ look: { id: string; status: string; n: number } }>(await stipule(...args, "--json"));
    expect(kept.look).toMatchObject({ id: "look-cli", status: "not-there", n: 5 });
    const undone = data<{ edit: { label: string } }>(await stipule("undo", "--json"));
    expect(undone.edit.label).toContain("look");
  });

  it("asks about capsules of 5.1 and 4.8 mm and keeps nothing: exit code 1", async () => {
    const asked = await stipule("read", "P1", "capsule_len", "5.1", "4.8");
    expect(asked.rc).toBe(1);
    expect(asked.err).toContain("centimetres?");
  });

  it("refuses to collect from nine stems and from the fen", async () => {
    const answer = async (plant: string) =>
      data<{ allowed: boolean; reasons: { code: string }[] }>(await stipule("may-collect", plant, "--on", "2022-08-21", "--json"));
    expect(await answer("P5")).toMatchObject({ allowed: false, reasons: [{ code: "one-in-twenty" }] });
    expect((await answer("P4")).reasons.map((reason) => reason.code)).toContain("permission-forbids");
  });

  it("takes the table it gave out in again", async () => {
    const csv = data<{ csv: string }>(await stipule("table", "export", "--json")).csv;
    const file = join(home, "t.csv");
    await writeFile(file, csv);
    expect((await stipule("table", "import", file, "--id", "again", "--title", "Again")).rc).toBe(0);
    await writeFile(file, `${csv}no-such-taxon-name,,,,no-rank\r\n`);
    const refused = await stipule("table", "import", file, "--id", "worse", "--title", "Worse", "--json");
    expect([refused.rc, data<{ accepted: boolean }>(refused).accepted]).toEqual([3, false]);
    expect((await stipule("table", "remove", "again")).rc).toBe(0);
  });

  it("says done with problems when a brought folder holds what is no photograph", async () => {
    const folder = join(home, "card");
    await mkdir(folder, { recursive: true });
    await writeFile(join(folder, "a.jpg"), "no picture");
    const brought = await stipule("bring", folder, "--json");
    expect([brought.rc, data<{ refused: number }>(brought).refused]).toEqual([3, 1]);
    expect((await stipule("proof", "--json")).rc).toBe(0);
  });

  it.each([
    [["look", "P99", "glands", "absent"], "P1, P2"],
    [["look", "P1", "glands"], "--not-there"],
    [["look", "P1", "no_such", "x"], "glands"],
    [["stand", "P1", "--until", "tomorrow"], "YYYY-MM-DD"],
    [["nonsense"], "unknown command"],
    [["slip", "P1", "Epilobium obscurum"], "--why"],
  ])("calls %s wrong usage, exit code 2, and says what there is", async (args, hint) => {
    const ended = await stipule(...args);
    expect([ended.rc, ended.out]).toEqual([2, ""]);
    expect(ended.err).toContain(hint);
  });

  it("says what its exit codes mean", async () => {
    expect(await stipule("help", "exit-codes")).toMatchObject({ rc: 0, out: expect.stringContaining("3 done, with problems") as string });
  });
});

describe("starting the server", () => {
  const held = async (): Promise<{ port: number; close: () => void }> => {
    const socket = createServer();
    await new Promise<void>((resolve) => socket.listen(0, "127.0.0.1", resolve));
    return { port: (socket.address() as { port: number }).port, close: () => socket.close() };
  };

  it("answers, holds the book, and stops in order when asked", async () => {
    const free = await held();
    free.close();
    const child = start("serve", "--no-open", "--port", String(free.port), "--book", book);
    let out = "";
    await new Promise<void>((resolve) => {
      child.stdout.on("data", (chunk: Buffer) => {
        out += chunk.toString();
        if (out.includes("Ctrl+C")) resolve();
      });
    });
    expect(out).toContain(`http://localhost:${free.port}`);
    expect(out).toContain(book);
    expect((await fetch(`http://localhost:${free.port}/api/plants`)).status).toBe(200);
    const locked = await stipule("plants", "--book", book);
    expect([locked.rc, locked.out]).toEqual([1, ""]);
    expect(locked.err).toContain("open in another program");
    child.kill("SIGTERM");
    const rc = await new Promise((resolve) => child.once("close", resolve));
    expect(rc).toBe(0);
    expect((await stipule("plants", "--book", book)).rc).toBe(0);
  });

  it("says which port is taken, and only tries others when none was asked for", async () => {
    const taken = await held();
    const ended = await stipule("serve", "--no-open", "--port", String(taken.port), "--book", book);
    taken.close();
    expect(ended.rc).toBe(1);
    expect(ended.err).toContain(`Port ${taken.port} is in use`);
    expect(ended.err).toContain("--port");
    expect((await stipule("serve", "--port", "70000")).rc).toBe(2);
  });

  it("says that nothing can be written where a file is in the way", async () => {
    const file = join(home, "a-file");
    await writeFile(file, "");
    const ended = await stipule("begin", join(file, "book"));
    expect(ended.rc).toBe(1);
    expect(ended.err).toContain(file);
    expect(ended.err).not.toContain("    at ");
  });

  it("names a damaged database and the way out, and changes nothing", async () => {
    const broken = join(home, "broken");
    await mkdir(broken, { recursive: true });
    await writeFile(join(broken, "stipule.sqlite"), "this is no database, whatever its name says. ".repeat(200));
    const ended = await stipule("serve", "--no-open", "--book", broken);
    expect(ended.rc).toBe(1);
    expect(ended.err).toContain("is damaged");
    expect(ended.err).toContain("backup");
    expect(ended.err).not.toContain("    at ");
  });

  it("says that there is no book in a folder", async () => {
    const ended = await stipule("plants", "--book", join(home, "nowhere"), "--json");
    expect([ended.rc, data<{ error: { code: string } }>(ended).error.code]).toEqual([1, "book-not-found"]);
  });
});
