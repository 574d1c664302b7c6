/**
 * Names inside sentences of the catalogue: a message is filled with names whose italic stretches stand between two marks
 * of Unicode's private use area, and the finished sentence is cut there again. Text of users loses those marks first.
 */
import type { NameSpan } from "../engine/index.js";

const open = "\uE000";
const close = "\uE001";
const marks = /[\uE000\uE001]/g;

/** User text without our private marks. */
export const unmarked = (text: string): string => text.replace(marks, "");

/** A name to be put into a message. */
export const markedName = (spans: readonly NameSpan[]): string =>
  spans.map((span) => (span.italic ? open + unmarked(span.text) + close : unmarked(span.text))).join("");

/** A filled message as spans. */
export const spansOf = (text: string): readonly NameSpan[] =>
  text
    .split(open)
    .flatMap((piece, i) => {
      if (i === 0) return [{ text: piece, italic: false }];
      const [name = "", ...rest] = piece.split(close);
      return [
        { text: name, italic: true },
        { text: rest.join(""), italic: false },
      ];
    })
    .filter((span) => span.text !== "");
