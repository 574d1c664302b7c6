import { expect, it } from "vitest";
import { nameParts } from "../engine/index.js";
import { markedName, spansOf, unmarked } from "./spans.js";

it("carries italics through a sentence", () => {
  const name = markedName(nameParts("Epilobium obscurum", "Schreb."));
  expect(spansOf(`Not ${name} at all`)).toEqual([
    { text: "Not ", italic: false },
    { text: "Epilobium obscurum", italic: true },
    { text: " Schreb. at all", italic: false },
  ]);
});

it("lets no text of users set the marks", () => {
  const sly = "a\uE000b\uE001c";
  expect(unmarked(sly)).toBe("abc");
  expect(spansOf(markedName([{ text: sly, italic: false }]))).toEqual([{ text: "abc", italic: false }]);
});
