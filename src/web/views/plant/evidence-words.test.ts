import { describe, expect, it } from "vitest";
import { lookSays, middleOf, readingSays } from "./evidence-words.js";

const look = (more: object) => ({ status: "seen", states: ["a"], characterId: "c", sure: "sure", n: null, ...more }) as never;
const table = {
  characters: [
    {
      id: "c",
      answer: {
        kind: "states",
        states: [
          { id: "a", name: "four lines" },
          { id: "b", name: "none" },
        ],
      },
    },
  ],
} as never;

describe("evidence in words", () => {
  it("says states by name, two as a choice when one cannot decide", () => {
    expect(lookSays(look({ states: ["a", "b"] }), table)).toBe("four lines and none");
    expect(lookSays(look({ states: ["a", "b"], sure: "between-two" }), table)).toBe("four lines or none");
    expect(lookSays(look({ states: ["z"] }), undefined)).toBe("z");
  });

  it("never says absent without the number looked at when there is one", () => {
    expect(lookSays(look({ status: "not-there", states: [], n: 5 }), table)).toContain("5");
  });

  it("says a series by its range, middle and number", () => {
    expect(middleOf([3, 1, 2])).toBe(2);
    expect(middleOf([1, 2, 3, 10])).toBe(2.5);
    expect(() => middleOf([])).toThrow(RangeError);
    const text = readingSays({ values: [43, 56, 50, 51], unit: "mm" } as never);
    expect(text).toContain("43–56");
    expect(text).toContain("50.5");
    expect(text).toContain("4");
  });
});
