/** How long a table of 100,000 scores takes: run with `npx tsx bench/store.bench.ts`. Prints seconds; judges nothing. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { ReferenceTable } from "../src/engine/index.js";
import { beginBook } from "../src/store/index.js";
import { sampleContent, sampleInfo } from "../tests/support/store-sample.js";
import { isStarted, report, type Figure } from "./report.js";

/** Measures; see the head of the file. */
export const storeFigures = async (): Promise<readonly Figure[]> => {
  const folder = mkdtempSync(join(tmpdir(), "stipule-bench-"));
  const [table] = sampleContent().tables;
  const [character, taxon, score] = [table?.characters[0], table?.taxa[0], table?.scores[2]];
  if (table === undefined || character === undefined || taxon === undefined || score === undefined)
    throw new RangeError("the sample is empty");
  const large: ReferenceTable = {
    ...table,
    characters: Array.from({ length: 200 }, (_, index) => ({ ...character, id: `c${index}` as typeof character.id })),
    taxa: Array.from({ length: 500 }, (_, index) => ({ ...taxon, id: `t${index}` as typeof taxon.id })),
    scores: Array.from({ length: 100_000 }, (_, index) => ({
      ...score,
      taxonId: `t${Math.floor(index / 200)}` as typeof taxon.id,
      characterId: `c${index % 200}` as typeof character.id,
    })),
    knownHybrids: [],
  };
  const figures: Figure[] = [];
  const timed = async (label: string, task: () => Promise<unknown>): Promise<void> => {
    const start = performance.now();
    await task();
    figures.push({
      figure: `table of 100,000 scores: ${label}`,
      target: "none set; for comparison",
      peer: null,
      ours: `${((performance.now() - start) / 1000).toFixed(2)} s`,
      peerValue: null,
      ratio: null,
      met: null,
      source: "the tests' sample table, multiplied",
      command: "npx tsx bench/store.bench.ts",
    });
  };
  const store = await beginBook(folder, sampleInfo, { clock: () => new Date() });
  await timed("put 100,000 scores", () => store.edit({ label: "put" }, (edit) => edit.putTable(large)));
  await timed("read them", () => store.table(large.id));
  const changed = { ...large, scores: large.scores.map((one, index) => (index === 5000 ? { ...one, page: "7" } : one)) };
  await timed("change one of them", () => store.edit({ label: "one" }, (edit) => edit.putTable(changed)));
  await timed("undo the one", () => store.undo());
  await timed("undo all", () => store.undo());
  await timed("redo all", () => store.redo());
  await timed("1000 edits of one record", async () => {
    for (let index = 0; index < 1000; index += 1) {
      await store.edit({ label: "person" }, (edit) => edit.put("person", { id: "P" as never, initials: `A${index}`, role: "" }));
    }
  });
  await store.close();
  rmSync(folder, { recursive: true, force: true });
  return figures;
};

if (isStarted(import.meta.url)) report("The store", await storeFigures());
