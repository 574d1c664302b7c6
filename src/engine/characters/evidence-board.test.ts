import { describe, expect, it } from "vitest";
import { character, type Character } from "./character.js";
import { look, reading } from "./evidence.js";
import { evidenceBoard, type BoardInput } from "./evidence-board.js";
import { stageRecord } from "./followed-plant.js";
import { stage } from "./vocabulary.js";

const measure = (id: string, more: object = {}): Character =>
  character.parse({ id, part: "leaf", name: id, group: id, seenIn: ["summer"], answer: { kind: "measure", unit: "mm" }, ...more });
const ratio = character.parse({
  id: "ratio",
  part: "leaf",
  name: "ratio",
  group: "ratio",
  seenIn: ["summer"],
  answer: { kind: "ratio", numerator: "length", denominator: "width" },
});
const stalk = character.parse({
  id: "stalk",
  part: "leaf",
  name: "stalk",
  group: "stalk",
  seenIn: ["summer"],
  answer: { kind: "states", states: ["stalked", "stalkless"].map((id) => ({ id, name: id })), absence: "stalkless" },
});
const stalkLength = measure("stalk-length", { onlyIf: { character: "stalk", states: ["stalked"] } });
const of = { plantId: "P", by: "" };
const series = (id: string, outingId: string, characterId: string, values: readonly number[]) =>
  reading.parse({ ...of, id, outingId, characterId, date: "2024-06-01", unit: "mm", values });
const board = (more: Partial<BoardInput>) =>
  evidenceBoard({
    characters: [measure("length"), measure("width"), ratio, stalk, stalkLength],
    stages: [stage.parse({ id: "spring", name: "spring" }), stage.parse({ id: "summer", name: "summer" })],
    looks: [],
    readings: [],
    stageRecords: [],
    photos: [],
    views: [],
    ...more,
  });
const rowOf = (rows: ReturnType<typeof board>, id: string) => rows.find((row) => row.character.id === id)!;

describe("the evidence board", () => {
  it("pairs the organs of a ratio within an outing, never across two", () => {
    const rows = board({
      readings: [
        series("a", "O1", "length", [40, 40, 40]),
        series("b", "O1", "width", [10, 10]),
        series("c", "O2", "length", [90]),
        series("d", "O2", "width", [30]),
      ],
    });
    expect(rowOf(rows, "ratio").cells[1]!.values).toEqual([4, 4, 3]);
  });

  it("knows that what hangs on a part does not exist where the part was looked for and not there", () => {
    const notThere = look.parse({ ...of, id: "l", outingId: "O1", characterId: "stalk", date: "2024-06-01", status: "not-there" });
    expect(rowOf(board({}), "stalk-length").applies).toBe(true);
    expect(rowOf(board({ looks: [notThere] }), "stalk-length").applies).toBe(false);
    expect(rowOf(board({ looks: [{ ...notThere, leaveOut: "too young" }] }), "stalk-length").applies).toBe(true);
  });

  it("hides nothing that was recorded at a stage the board does not have", () => {
    const elsewhere = stageRecord.parse({ ...of, id: "s", outingId: "O1", date: "2024-06-01", stageId: "of-the-book", answer: "yes" });
    const rows = board({ readings: [series("a", "O1", "length", [40])], stageRecords: [elsewhere] });
    expect(rowOf(rows, "length").cells.map((cell) => cell.values)).toEqual([[], [40]]);
  });
});
