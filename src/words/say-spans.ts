/** Messages with stretches set in italics (names): the message stays one whole sentence, the spans find their place in it. */
import { say, type Word, type WordValue } from "./speaker.js";

/** A stretch of text; the texts of all spans joined are the plain text. */
export interface Span {
  readonly text: string;
  readonly italic: boolean;
}

const OPEN = "\uE000";
const CLOSE = "\uE001";
const token = new RegExp(`${OPEN}(\\d+)${CLOSE}`, "u");

const plain = (text: string): Span[] => (text === "" ? [] : [{ text, italic: false }]);

/** Puts spans back where their tokens stand in a text. */
const weave = (text: string, pieces: readonly (readonly Span[])[]): readonly Span[] =>
  text.split(token).flatMap((part, index) => (index % 2 === 0 ? plain(part) : (pieces[Number(part)] ?? [])));

/** Says a word of the catalogue; values that are lists of spans are woven in as they are. */
export const saySpans = (key: Word, values: Readonly<Record<string, WordValue | readonly Span[]>> = {}): readonly Span[] => {
  const pieces: (readonly Span[])[] = [];
  const tokens: Record<string, WordValue> = {};
  for (const [name, value] of Object.entries(values)) {
    if (Array.isArray(value)) {
      tokens[name] = `${OPEN}${String(pieces.length)}${CLOSE}`;
      pieces.push(value as readonly Span[]);
    } else {
      tokens[name] = value as WordValue;
    }
  }
  return weave(say(key, tokens), pieces);
};

/** "a, b or c" (or "and") of spans, joined as the language joins lists. */
export const listSpans = (items: readonly (readonly Span[])[], joined: "or" | "and", language = "en"): readonly Span[] =>
  weave(
    listText(
      items.map((_, index) => `${OPEN}${String(index)}${CLOSE}`),
      joined,
      language,
    ),
    items,
  );

/** "a, b or c" (or "and") of texts. English is joined without a comma before the last. */
export const listText = (items: readonly string[], joined: "or" | "and", language = "en"): string =>
  new Intl.ListFormat(language === "en" ? "en-GB" : language, { type: joined === "or" ? "disjunction" : "conjunction" }).format(items);

/** The plain text of spans. */
export const spansText = (spans: readonly Span[]): string => spans.map((span) => span.text).join("");
