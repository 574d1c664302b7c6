/**
 * Many photographs at once through the real store and workers: progress goes up one by one, stopping keeps what is finished,
 * the next run does the rest, memory stays flat. 600 of them, or as many as STIPULE_MANY says (10000 for the whole).
 */
import { execFile } from "node:child_process";
import { promisify } from "node:util";
import { expect, it } from "vitest";
import { beginBook, openBook } from "../../src/store/index.js";
import type { ManySaid } from "../support/bring-many-child.js";
import { compiledChild } from "../support/compiled-child.js";
import { fixedClock, sampleInfo } from "../support/store-sample.js";
import { temporaryFolders } from "../support/temporary-folder.js";

const newFolder = temporaryFolders();
const child = await compiledChild("bring-many-child");
const count = Number(process.env["STIPULE_MANY"] ?? 600);

it(
  `brings ${count} photographs, is stopped and goes on, with flat memory`,
  async () => {
    const folder = newFolder();
    await (await beginBook(folder, sampleInfo, { clock: fixedClock })).close();
    const { stdout } = await promisify(execFile)(process.execPath, [...child, folder, String(count)], { maxBuffer: 10_000_000 });
    const said = stdout
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line) as ManySaid);
    const reportOf = (run: ManySaid["run"]) => said.find((one) => one.run === run && one.report !== undefined)!.report!;

    const [stopped, whole] = [reportOf("stopped"), reportOf("whole")];
    const third = Math.floor(count / 3);
    expect(stopped).toMatchObject({ here: 0, refused: 0, cancelled: true, files: stopped.fresh });
    // What was in hand is finished: one a thread and one more.
    expect(stopped.fresh).toBeGreaterThanOrEqual(third);
    expect(stopped.fresh).toBeLessThanOrEqual(third + 3);
    expect(whole).toMatchObject({ fresh: count - stopped.fresh, here: stopped.fresh, refused: 0, cancelled: false, files: count });

    const memory = said.flatMap((one) => (one.rssMb === undefined ? [] : [one.rssMb]));
    console.log(
      `${count} photographs: ${stopped.seconds.toFixed(0)} s to a third, ${whole.seconds.toFixed(0)} s for all; MB resident ${memory.map((mb) => mb.toFixed(0)).join(" ")}`,
    );
    // A fifth of the way everything has been loaded; the files themselves are 120 MB.
    expect(memory.length).toBeGreaterThan(20);
    const start = memory[4]!;
    expect(Math.max(...memory.slice(-8)) - start).toBeLessThan(80);

    const store = await openBook(folder, { clock: fixedClock });
    expect(await store.count("photo")).toBe(count);
    expect(await store.proof()).toMatchObject({ clean: true, originalsChecked: count, findings: [] });
    await store.close();
  },
  300_000 + count * 500,
);
