/** The front door of the words: the catalogue and how it is spoken. Pure; no file, no clock. */
export { en } from "./en.js";
export { say, speaker } from "./speaker.js";
export type { Catalogue, Say, Word, WordValue, WordValues } from "./speaker.js";
export { dateWords } from "./date-words.js";
export type { DateWords } from "./date-words.js";
export { listSpans, listText, saySpans, spansText } from "./say-spans.js";
export type { Span } from "./say-spans.js";
