import { describe, expect, it } from "vitest";
import { changeFor, choicesUnder, digitOf, meaningOf, type Rows } from "./keys.js";

const list = (n: number, name: string): { value: string; label: string }[] =>
  Array.from({ length: n }, (_, i) => ({ value: `${name}${i + 1}`, label: `${name} ${i + 1}` }));
const rows: Rows = { plant: list(6, "P"), view: list(19, "v"), stage: list(9, "S"), part: list(12, "part") };

describe("keys of the sorting trays", () => {
  it("gives the digits to the row at hand; 0 is the tenth", () => {
    expect(meaningOf("2", rows, { row: "plant", page: 0 })).toMatchObject({ kind: "say", row: "plant", choice: { value: "P2" } });
    expect(meaningOf("0", rows, { row: "view", page: 0 })).toMatchObject({ choice: { value: "v10" } });
    expect(meaningOf("3", rows, { row: "view", page: 1 })).toMatchObject({ choice: { value: "v13" } });
    expect(meaningOf("9", rows, { row: "plant", page: 0 })).toBeUndefined();
    expect([0, 8, 9].map(digitOf)).toEqual(["1", "9", "0"]);
  });

  it("turns the page when a row's letter is pressed again", () => {
    expect(meaningOf("V", rows, { row: "plant", page: 0 })).toEqual({ kind: "turn", under: { row: "view", page: 0 } });
    expect(meaningOf("v", rows, { row: "view", page: 0 })).toEqual({ kind: "turn", under: { row: "view", page: 1 } });
    expect(meaningOf("v", rows, { row: "view", page: 1 })).toEqual({ kind: "turn", under: { row: "view", page: 0 } });
    expect(choicesUnder(rows, { row: "view", page: 1 })).toHaveLength(9);
  });

  it("knows the other keys and leaves the rest alone", () => {
    expect(["/", ".", "Enter", "u", "X", " "].map((k) => meaningOf(k, rows, { row: "view", page: 0 })?.kind)).toEqual([
      "find",
      "repeat",
      "next",
      "undo",
      "leave-out",
      "large",
    ]);
    expect(meaningOf("Tab", rows, { row: "view", page: 0 })).toBeUndefined();
    expect(meaningOf("q", rows, { row: "view", page: 0 })).toBeUndefined();
  });

  it("writes an id or clears it", () => {
    expect(changeFor("view", "habit")).toEqual({ viewId: "habit" });
    expect(changeFor("plant", "")).toEqual({ plantId: null });
    expect(changeFor("part", "leaf")).toEqual({ part: "leaf" });
  });
});
