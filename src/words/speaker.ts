/**
 * Says a message of the catalogue. The keys and their English text are the type: a key that does not exist does not
 * compile. Another language may lack words; then the English one is said and marked as missing there, never guessed.
 */
import { IntlMessageFormat } from "intl-messageformat";
import { en } from "./en.js";

/** A key of the catalogue. */
export type Word = keyof typeof en;
/** What may be put into a message's places. */
export type WordValue = string | number | boolean | Date | null | undefined;
export type WordValues = Readonly<Record<string, WordValue>>;
/** The words of one language; it need not have them all. */
export type Catalogue = Readonly<Partial<Record<Word, string>>>;
/** Says a word. `values` fill the places of the message. */
export type Say = (key: Word, values?: WordValues) => string;

const compiled = new Map<string, IntlMessageFormat>();

const format = (language: string, message: string): IntlMessageFormat => {
  const id = `${language}\u0000${message}`;
  const known = compiled.get(id);
  if (known !== undefined) return known;
  // Our words are plain text: "<" in a message is a character, not the beginning of a tag.
  const made = new IntlMessageFormat(message, language, undefined, { ignoreTag: true });
  compiled.set(id, made);
  return made;
};

const fill = (language: string, message: string, values: WordValues): string => String(format(language, message).format({ ...values }));

/** A word of the English catalogue. @throws {Error} when a place of the message has no value: a fault of the caller. */
export const say: Say = (key, values = {}) => fill("en", en[key], values);

/** The catalogues we have besides English, by language tag. */
const catalogues: Readonly<Record<string, Catalogue>> = {};

/**
 * A speaker of `language` (BCP 47). A word its catalogue lacks is said in English between "[en: ...]", so that what is
 * missing is seen; a language without any catalogue speaks plain English. `others` replaces the built-in catalogues (tests,
 * translations tried out).
 */
export const speaker = (language: string, others: Readonly<Record<string, Catalogue>> = catalogues): Say => {
  const base = language.split("-")[0] ?? "en";
  const words = others[language] ?? others[base];
  if (base === "en" || words === undefined) return say;
  return (key, values = {}) => {
    const message = words[key];
    return message === undefined ? `[en: ${say(key, values)}]` : fill(language, message, values);
  };
};
