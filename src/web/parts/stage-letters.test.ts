import { describe, expect, it } from "vitest";
import { stageLetters } from "./stage-letters.js";

describe("stageLetters", () => {
  it("takes initials, and more of the word where initials clash", () => {
    expect(stageLetters(["overwintering", "young shoots", "buds", "first flowers", "full flower", "die-back"])).toEqual([
      "O",
      "YS",
      "B",
      "Fi",
      "Fu",
      "DB",
    ]);
  });

  it("keeps all apart even when the words begin alike", () => {
    const letters = stageLetters(["flowering one", "flowering other", "flower"]);
    expect(new Set(letters).size).toBe(3);
  });
});
