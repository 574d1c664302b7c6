/**
 * The process that is killed. It opens the book, brings photographs and makes edits without end, and says on its standard
 * output what it is about to do and, after the promise is kept, that it is done. One JSON object a line.
 * Arguments: folder, seed, and "hold" to open the book and do nothing.
 */
import { writeSync } from "node:fs";
import { look, photo } from "../../src/engine/index.js";
import { openBook } from "../../src/store/index.js";
import { sampleContent } from "./store-sample.js";

export type Said =
  | { readonly say: "start" | "open" }
  | { readonly say: "try" | "done"; readonly deed: "edit"; readonly label: string }
  | { readonly say: "done"; readonly deed: "original"; readonly id: string }
  | { readonly say: "try" | "done"; readonly deed: "undo" | "redo"; readonly label: string };

/** A small linear congruential generator (Knuth 1981, The Art of Computer Programming 2, 3.3.4, line 16): seeded and repeatable. */
export const seeded = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
};

const say = (said: Said): void => {
  // Straight to the descriptor: nothing that was said may be lost in a buffer when the process is killed.
  writeSync(1, `${JSON.stringify(said)}\n`);
};

const run = async (folder: string, seed: number, hold: boolean): Promise<void> => {
  say({ say: "start" });
  // A day a round, so that rounds are killed in backups and their thinning too.
  const store = await openBook(folder, { clock: () => new Date(Date.UTC(2022, 6, 1) + seed * 90_000_000) });
  say({ say: "open" });
  if (hold) await new Promise((resolve) => setTimeout(resolve, 120_000));
  const random = seeded(seed);
  const [plainLook] = sampleContent().looks;
  const [plainPhoto] = sampleContent().photos;
  for (let step = 0; ; step += 1) {
    const label = `round ${seed} step ${step}`;
    const choice = random();
    const newest = (await store.history(1))[0];
    if (choice < 0.15 && newest?.undoable === true && newest.state === "done") {
      say({ say: "try", deed: "undo", label: newest.label });
      await store.undo();
      say({ say: "done", deed: "undo", label: newest.label });
    } else if (choice < 0.3 && newest?.state === "undone") {
      const next = (await store.history(500)).filter((edit) => edit.state === "undone" && edit.label.startsWith(`round ${seed} `));
      if (next.length !== 1 || next[0] === undefined || next[0].id !== newest.id) continue;
      say({ say: "try", deed: "redo", label: newest.label });
      await store.redo();
      say({ say: "done", deed: "redo", label: newest.label });
    } else {
      const bytes = Buffer.from(Array.from({ length: 1 + Math.floor(random() * 30_000) }, () => Math.floor(random() * 256)));
      const original = await store.files.addOriginal(bytes);
      say({ say: "done", deed: "original", id: original.id });
      await store.files.writeDerivative(original.id, 320, bytes.subarray(0, 100));
      say({ say: "try", deed: "edit", label });
      await store.edit({ label }, async (edit) => {
        await edit.put("photo", photo.parse({ ...plainPhoto, id: original.id, bytes: original.bytes, caption: label }));
        await edit.put("look", look.parse({ ...plainLook, id: `look-${seed}-${step}`, note: label, photoIds: [original.id] }));
      });
      say({ say: "done", deed: "edit", label });
    }
  }
};

const [, program, folder, seed, mode] = process.argv;
if (/store-kill-child\.[jt]s$/.test(program ?? "") && folder !== undefined) await run(folder, Number(seed), mode === "hold");
