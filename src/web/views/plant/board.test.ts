import { describe, expect, it } from "vitest";
import { runsOfParts, stepFrom } from "./board.js";

describe("stepFrom", () => {
  it("moves within the board and stops at its edges", () => {
    expect(stepFrom("ArrowRight", 2, 8, 28, 9)).toEqual([2, 8]);
    expect(stepFrom("ArrowUp", 0, 3, 28, 9)).toEqual([0, 3]);
    expect(stepFrom("PageDown", 25, 3, 28, 9)).toEqual([27, 3]);
    expect(stepFrom("Home", 4, 5, 28, 9)).toEqual([4, 0]);
    expect(stepFrom("x", 4, 5, 28, 9)).toBeUndefined();
  });
});

describe("runsOfParts", () => {
  it("gathers neighbouring rows of one part and remembers where each run begins", () => {
    const row = (part: string) => ({ part }) as never;
    expect(runsOfParts([row("stem"), row("stem"), row("leaf"), row("stem")]).map((run) => [run.part, run.from, run.rows.length])).toEqual([
      ["stem", 0, 2],
      ["leaf", 2, 1],
      ["stem", 3, 1],
    ]);
  });
});
