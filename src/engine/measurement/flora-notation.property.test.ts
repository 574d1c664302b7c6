import fc from "fast-check";
import { expect, it } from "vitest";
import { writeFloraRange } from "./flora-notation.js";
import { readFloraRange } from "./read-flora-range.js";

it("reads back what it writes", () => {
  const four = fc
    .array(fc.integer({ min: 0, max: 99_999 }), { minLength: 4, maxLength: 4 })
    .map((v) => v.map((x) => x / 100).sort((a, b) => a - b));
  fc.assert(
    fc.property(four, fc.constantFrom("", "mm", "cm", "%"), ([min, low, high, max], unit) => {
      const text = writeFloraRange({ min: min!, low: low!, high: high!, max: max! }, { unit, decimals: 2 });
      const back = readFloraRange(text);
      expect(back.ok).toBe(true);
      if (!back.ok || back.value.kind !== "range") return;
      const { value } = back;
      expect([value.min ?? value.low, value.low, value.high, value.max ?? value.high]).toEqual([min, low, high, max]);
      expect(value.unit ?? "").toBe(unit);
    }),
  );
});

it("answers any text without throwing", () => {
  fc.assert(fc.property(fc.string({ unit: "binary", maxLength: 60 }), (text) => typeof readFloraRange(text).ok === "boolean"));
});
