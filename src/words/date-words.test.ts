import { expect, it } from "vitest";
import { dateWords } from "./date-words.js";

it("writes dates, to the day or to the month", () => {
  const en = dateWords("en");
  expect(en.day("2022-07-06")).toBe("6 July 2022");
  expect(en.day("2022-07")).toBe("July 2022");
  expect(en.dayOfYear("2022-07-06")).toBe("6 July");
  expect(en.dayOfYear("2022-07")).toBe("July");
  expect([1, 12].map(en.shortMonth)).toEqual(["Jan", "Dec"]);
  expect(dateWords("de").day("2022-07-06")).toBe("6. Juli 2022");
  expect(() => en.day("soon")).toThrow(RangeError);
});
