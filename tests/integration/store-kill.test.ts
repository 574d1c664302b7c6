/**
 * A process that brings photographs and makes edits is killed at random moments. Whatever it had said to be done must be
 * there afterwards, the book must prove clean, and undo must work. This covers a killed process, not a power cut.
 * Rounds: 12, or as many as STIPULE_KILL_ROUNDS says; STIPULE_KILL_SEED changes the moments.
 */
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { expect, it } from "vitest";
import type { PhotoId } from "../../src/engine/index.js";
import { beginBook, openBook } from "../../src/store/index.js";
import { compiledChild } from "../support/compiled-child.js";
import { seeded } from "../support/store-kill-child.js";
import type { Said } from "../support/store-kill-child.js";
import { fixedClock, sampleContent, sampleInfo } from "../support/store-sample.js";
import { temporaryFolders } from "../support/temporary-folder.js";

const newFolder = temporaryFolders();
const program = await compiledChild("store-kill-child");
const rounds = Number(process.env["STIPULE_KILL_ROUNDS"] ?? 12);
const seed = Number(process.env["STIPULE_KILL_SEED"] ?? 1);

/** Runs the child until it has said `lines` lines and `delayMs` more, kills it, and gives all it said. */
const runAndKill = (folder: string, round: number, lines: number, delayMs: number): Promise<readonly Said[]> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...program, folder, String(round)], { stdio: ["ignore", "pipe", "pipe"] });
    let out = "";
    let err = "";
    let timer: NodeJS.Timeout | undefined;
    const look = (): void => {
      if (timer === undefined && out.split("\n").length > lines) timer = setTimeout(() => child.kill("SIGKILL"), delayMs);
    };
    child.stdout.setEncoding("utf8").on("data", (part: string) => {
      out += part;
      look();
    });
    child.stderr.setEncoding("utf8").on("data", (part: string) => (err += part));
    child.on("error", reject);
    child.on("close", (_code, signal) => {
      clearTimeout(timer);
      if (signal !== "SIGKILL") reject(new Error(`the child ended by itself: ${err}`));
      // A line without its end was not said.
      else
        resolve(
          out
            .split("\n")
            .slice(0, -1)
            .map((line) => JSON.parse(line) as Said),
        );
    });
    look();
  });

it(
  `nothing acknowledged is lost in ${rounds} kills (seed ${seed})`,
  async () => {
    const folder = newFolder();
    const first = await beginBook(folder, sampleInfo, { clock: fixedClock });
    await first.putContent({ ...sampleContent(), photos: [], looks: [] }, { label: "Lay down", undoable: false });
    await first.close();
    const random = seeded(seed);
    const standing = new Map<string, "done" | "undone">();
    const originals = new Set<string>();
    let acknowledged = 0;
    let cutShort = 0;
    let killedOpening = 0;

    for (let round = 1; round <= rounds; round += 1) {
      // A fifth of the rounds is killed while the book is being opened.
      const early = random() < 0.2;
      const said = await runAndKill(folder, round, early ? 1 : 2 + Math.floor(random() * 60), random() * (early ? 40 : 12));
      if (said.length === 1) killedOpening += 1;
      let open: Extract<Said, { say: "try" | "done"; label: string }> | null = null;
      for (const one of said) {
        if (!("deed" in one)) continue;
        if (one.deed === "original") originals.add(one.id);
        else if (one.say === "try") open = one;
        else {
          open = null;
          acknowledged += 1;
          standing.set(one.label, one.deed === "undo" ? "undone" : "done");
        }
      }
      const store = await openBook(folder, { clock: fixedClock });
      try {
        const history = new Map((await store.history(1_000_000)).map((edit) => [edit.label, edit.state]));
        if (open !== null) {
          // Not acknowledged: either way is right, as long as it is one of the two.
          cutShort += 1;
          const now = history.get(open.label);
          if (now === undefined) expect(open.deed).toBe("edit");
          else standing.set(open.label, now);
        }
        const looks = new Map((await store.list("look")).map((look) => [look.note, look]));
        for (const [label, state] of standing) {
          expect([label, history.get(label)]).toEqual([label, state]);
          expect([label, looks.has(label)]).toEqual([label, state === "done"]);
        }
        expect([...looks.keys()].every((label) => standing.get(label) === "done")).toBe(true);
        for (const id of originals) expect(existsSync(store.files.originalPath(id as PhotoId))).toBe(true);
        const proof = await store.proof();
        expect(proof.findings.filter((finding) => finding.severity === "damage")).toEqual([]);
        expect(proof.findings.filter((finding) => finding.code === "leftover-temporary")).toEqual([]);
        expect(proof.clean).toBe(true);

        const before = await store.content();
        const undone = await store.undo();
        if (undone !== null) {
          expect((await store.list("look")).some((look) => look.note === undone.label)).toBe(false);
          expect((await store.redo())?.label).toBe(undone.label);
        }
        expect(await store.content()).toEqual(before);
      } finally {
        await store.close();
      }
    }
    console.log(
      `${rounds} kills (${killedOpening} while opening): ${acknowledged} deeds acknowledged, ${originals.size} originals, ${cutShort} deeds cut short, 0 lost`,
    );
    expect(acknowledged).toBeGreaterThan(rounds);
  },
  120_000 + rounds * 30_000,
);
