import { describe, expect, it } from "vitest";
import { demoYear } from "../../../tests/support/demo-year.js";
import { readLooksCsv } from "./looks-csv.js";

const table = demoYear().content.tables[0]!;
const read = (csv: string) => readLooksCsv(csv, table);

describe("looks of specimens on a plain file", () => {
  it("reads states, undecided looks, absence, series and companions", () => {
    const { specimens, problems } = read(
      "specimen,stem_lines,glands,glands n,glands lens,petal_colour,capsule_len,stigma\nD1,four,not there,5,x20,clear or deep,4.3 4.5 5 cm,?\nD2,four lines,calyx_only,,,clear | deep,,\n",
    );
    expect(problems).toEqual([]);
    const [first, second] = specimens;
    expect(first!.looks.map((look) => [look.characterId, look.status, look.states, look.sure, look.n, look.lens])).toEqual([
      ["stem_lines", "seen", ["four"], "sure", null, null],
      ["glands", "not-there", [], "sure", 5, "x20"],
      ["petal_colour", "seen", ["clear", "deep"], "between-two", null, null],
      ["stigma", "could-not-tell", [], "sure", null, null],
    ]);
    expect(first!.readings[0]).toMatchObject({ characterId: "capsule_len", unit: "mm", values: [43, 45, 50] });
    expect(second!.looks.map((look) => look.states)).toEqual([["four"], ["calyx_only"], ["clear", "deep"]]);
  });

  it("names each problem and goes on with the other rows", () => {
    const { specimens, problems } = read(
      "specimen,stem_lines,petal_len,nonsense\nA,five,5,x\nB,four,abc,\nB,four,5 6 7,\n,four,,\nC,=1,,\n",
    );
    expect(specimens.map((specimen) => specimen.name)).toEqual([]);
    expect(problems.map((problem) => [problem.code, problem.where])).toEqual([
      ["unknown-character", "row 1, column 4"],
      ["unknown-state", "row 2, column stem_lines"],
      ["not-a-number", "row 3, column petal_len"],
      ["specimen-twice", "row 4"],
      ["specimen-without-name", "row 5"],
      ["formula", "row 6, column stem_lines"],
    ]);
  });

  it.each([
    ["", "empty-file"],
    ["x,y\n", "no-specimen-column"],
    ["specimen,a\nr\uFFFDd,1\n", "wrong-encoding"],
    ['specimen,"a\n', "not-csv"],
  ])("refuses %j", (csv, code) => {
    expect(read(csv).problems[0]!.code).toBe(code);
  });
});
