import { expect, it } from "vitest";
import { referenceTable } from "../characters/reference-table.js";
import { scoreLookup } from "./score-lookup.js";
import { prepareTable } from "./prepared-table.js";

const range = (low: number, high: number) => ({ kind: "range" as const, low, high });
const table = (scores: readonly object[]) =>
  referenceTable.parse({
    id: "t",
    title: "t",
    stages: [],
    sources: [
      { id: "gray", citation: "Gray" },
      { id: "otis", citation: "Otis" },
    ],
    taxa: [{ id: "A", name: "A" }],
    characters: [
      { id: "len", part: "leaf", name: "length", group: "size", answer: { kind: "measure", unit: "mm" } },
      {
        id: "hue",
        part: "flower",
        name: "colour",
        group: "hue",
        answer: {
          kind: "states",
          states: [
            { id: "red", name: "red" },
            { id: "white", name: "white" },
          ],
        },
      },
    ],
    scores,
  });

it("unites sources that differ, in the rule and in the probabilities alike, whatever their order", () => {
  const scores = [
    { taxonId: "A", characterId: "len", value: range(4, 6), sourceId: "gray" },
    { taxonId: "A", characterId: "len", value: { ...range(5, 9), max: 12 }, sourceId: "otis" },
    { taxonId: "A", characterId: "hue", value: { kind: "states", usual: ["red"] }, sourceId: "gray" },
    { taxonId: "A", characterId: "hue", value: { kind: "states", usual: ["white"], rarely: ["red"] }, sourceId: "otis" },
  ];
  const [first, second] = [table(scores), table(scores.toReversed())];
  const lookup = scoreLookup(first);
  expect(lookup("A" as never, "len" as never)).toEqual({ kind: "range", min: 4, low: 4, high: 9, max: 12 });
  expect(lookup("A" as never, "hue" as never)).toMatchObject({ rarely: [] });
  expect(prepareTable(first).characters.get("len" as never)).toEqual(prepareTable(second).characters.get("len" as never));
});
