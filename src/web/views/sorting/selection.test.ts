import { describe, expect, it } from "vitest";
import { choose, chooseAll, keepChosen, nothingChosen, stepOf } from "./selection.js";

const ids = ["a", "b", "c", "d", "e", "f"];
const chosen = (s: { chosen: ReadonlySet<string> }): string => [...s.chosen].toSorted().join("");

describe("selection of sheets", () => {
  it("chooses alone, extends from the anchor both ways, toggles one", () => {
    const c = choose(ids, nothingChosen, 2, "alone");
    expect(chosen(c)).toBe("c");
    const toE = choose(ids, c, 4, "extend");
    expect(chosen(toE)).toBe("cde");
    const toA = choose(ids, toE, 0, "extend");
    expect(chosen(toA)).toBe("abc");
    const without = choose(ids, toA, 1, "toggle");
    expect(chosen(without)).toBe("ac");
    expect(chosen(choose(ids, without, 5, "toggle"))).toBe("acf");
  });

  it("stops at the edges and takes all", () => {
    expect(choose(ids, nothingChosen, 99, "alone").at).toBe(5);
    expect(choose(ids, nothingChosen, -Infinity, "alone").at).toBe(0);
    expect(chosen(chooseAll(ids, nothingChosen))).toBe("abcdef");
    expect(choose([], nothingChosen, 0, "alone")).toBe(nothingChosen);
  });

  it("stands on the next sheet when the chosen ones were put elsewhere", () => {
    const put = choose(ids, choose(ids, nothingChosen, 1, "alone"), 2, "extend");
    const left = ["a", "d", "e", "f"];
    const then = keepChosen(left, { ...put, at: 1 });
    expect(chosen(then)).toBe("d");
    expect(keepChosen([], put)).toBe(nothingChosen);
  });

  it("knows the keys of movement only", () => {
    expect(stepOf("ArrowDown", 5, 3)).toBe(5);
    expect(stepOf("PageUp", 5, 3)).toBe(-15);
    expect(stepOf("x", 5, 3)).toBeUndefined();
  });
});
