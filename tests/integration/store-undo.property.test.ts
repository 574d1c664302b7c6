/** Random sequences of edits against a book: undoing all gives the start, redoing all the end, whatever was done. */
import fc from "fast-check";
import { join } from "node:path";
import { expect, it } from "vitest";
import type { BookContent } from "../../src/engine/index.js";
import { beginBook, isStoreError, openBook } from "../../src/store/index.js";
import type { Edit, RecordKind } from "../../src/store/index.js";
import { contentKey, recordKinds } from "../../src/store/records/record-shapes.js";
import { fixedClock, sampleContent, sampleInfo } from "../support/store-sample.js";
import { temporaryFolders } from "../support/temporary-folder.js";

const newFolder = temporaryFolders();

/** One deed on the sample's own records and copies of them: many fit together, many are refused. */
type Deed =
  | { readonly deed: "put"; readonly kind: RecordKind; readonly copy: number; readonly note: string }
  | { readonly deed: "remove"; readonly kind: RecordKind; readonly copy: number }
  | { readonly deed: "table"; readonly order: readonly number[]; readonly note: string }
  | { readonly deed: "info"; readonly note: string }
  | { readonly deed: "content"; readonly without: RecordKind };

// Any text UTF-8 can hold: no half characters.
const note = fc.string({ unit: "binary", maxLength: 6 });
const kind = fc.constantFrom(...recordKinds);
const copy = fc.nat({ max: 2 });
const deed: fc.Arbitrary<Deed> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ deed: fc.constant("put" as const), kind, copy, note }) },
  { weight: 4, arbitrary: fc.record({ deed: fc.constant("remove" as const), kind, copy }) },
  { weight: 2, arbitrary: fc.record({ deed: fc.constant("table" as const), order: fc.shuffledSubarray([0, 1, 2, 3]), note }) },
  { weight: 1, arbitrary: fc.record({ deed: fc.constant("info" as const), note }) },
  { weight: 1, arbitrary: fc.record({ deed: fc.constant("content" as const), without: kind }) },
);

const recordOf = (which: RecordKind, number: number): { id: string } => {
  const record = sampleContent()[contentKey[which]][0]!;
  if (number === 0) return record;
  return { ...record, id: which === "photo" ? String(number).repeat(64) : `${record.id}-${number}` };
};
/** The free-text field of each kind. */
const textField: Readonly<Record<RecordKind, string>> = {
  person: "role",
  stage: "looksLike",
  view: "part",
  spot: "note",
  permission: "allows",
  plant: "note",
  happening: "note",
  outing: "goal",
  stop: "from",
  stageRecord: "why",
  look: "note",
  reading: "note",
  slip: "name",
  voucher: "parts",
  photo: "caption",
  account: "author",
};

const carryOut = async (edit: Edit, what: Exclude<Deed, { deed: "content" }>): Promise<void> => {
  switch (what.deed) {
    case "put": {
      const record: Record<string, unknown> & { id: string } = { ...recordOf(what.kind, what.copy) };
      if (what.kind !== "stop") record[textField[what.kind]] = what.note;
      // An empty name of a slip is refused: one of the refusals that must leave no trace.
      return edit.put(what.kind, record as never);
    }
    case "remove":
      return edit.remove(what.kind, recordOf(what.kind, what.copy).id);
    case "table": {
      const table = sampleContent().tables[0]!;
      const scores = what.order.flatMap((index) => table.scores[index] ?? []).map((score) => ({ ...score, words: what.note }));
      return edit.putTable({ ...table, scores });
    }
    case "info":
      return edit.putInfo({ ...sampleInfo, notice: what.note });
  }
};

it("undo all = start, redo all = end, content into a new book = the same content", async () => {
  let edits = 0;
  let refused = 0;
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.array(deed, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 8 }),
      fc.boolean(),
      async (sequence, restart) => {
        const folder = join(newFolder(), "book");
        let store = await beginBook(folder, sampleInfo, { clock: fixedClock });
        await store.putContent(sampleContent(), { label: "sample", undoable: false });
        const states: BookContent[] = [await store.content()];
        for (const group of sequence) {
          const before = await store.history(1);
          try {
            const whole = group.find((one) => one.deed === "content");
            if (whole?.deed === "content")
              await store.putContent({ ...sampleContent(), [contentKey[whole.without]]: [] }, { label: "content" });
            else {
              await store.edit({ label: "deeds" }, async (edit) => {
                for (const one of group) if (one.deed !== "content") await carryOut(edit, one);
              });
            }
          } catch (error) {
            if (!isStoreError(error)) throw error;
            refused += 1;
            expect(await store.content()).toEqual(states.at(-1));
          }
          if ((await store.history(1))[0]?.id !== before[0]?.id) states.push(await store.content());
        }
        edits += states.length - 1;
        if (restart) {
          await store.close();
          store = await openBook(folder, { clock: fixedClock });
        }
        for (const expected of states.slice(0, -1).toReversed()) {
          expect(await store.undo()).not.toBeNull();
          expect(await store.content()).toEqual(expected);
        }
        expect(await store.undo()).toBeNull();
        expect(states[0]).toEqual(sampleContent());
        for (const expected of states.slice(1)) {
          expect(await store.redo()).not.toBeNull();
          expect(await store.content()).toEqual(expected);
        }
        expect(await store.redo()).toBeNull();
        expect((await store.proof()).findings.filter((one) => one.code !== "original-missing")).toEqual([]);

        const other = await beginBook(join(newFolder(), "other"), sampleInfo, { clock: fixedClock });
        await other.putContent(await store.content(), { label: "archive" });
        expect(await other.content()).toEqual(await store.content());
        await other.close();
        await store.close();
      },
    ),
    { numRuns: Number(process.env["STIPULE_UNDO_RUNS"] ?? 25) },
  );
  // The sequences would prove little if nearly all of them were refused.
  expect(edits).toBeGreaterThan(25);
  expect(refused).toBeGreaterThan(0);
}, 300_000);
