/**
 * A scientific name cut into spans that know whether they are set in italics. Italics are for the parts of a name (genus,
 * epithets), not for rank terms, authors, the hybrid sign or words of doubt. The name is data and is not corrected: what
 * is written is shown, only the sign of hybrids and its spacing are set by rule.
 *
 * Source: International Code of Nomenclature for algae, fungi, and plants (Madrid Code, 2025): Art. 20-24 (names and
 * connecting rank terms), Art. 22.1 and 26.1 (autonyms take no author), Art. H.1-H.3 and Rec. H.3A (hybrids); numbers
 * from memory of the Shenzhen Code (2018). The place of "cf." and "aff." before the doubtful part is common practice
 * (Darwin Core, identificationQualifier).
 */
import { escapeHtml } from "../base/html-text.js";

/** A stretch of a name; the texts of all spans joined are the plain text. */
export interface NameSpan {
  readonly text: string;
  /** A part of the name itself, Latin, set in italics. */
  readonly italic: boolean;
}

/** Words of doubt that stand before the doubtful part. "conf." is a role of a slip, not a doubt. */
export type NameQualifier = "" | "cf." | "aff." | "?";

const rankTerms = new Set(
  [
    "subgen. subg. sect. subsect. ser. subser. subsp. ssp. var. subvar. f. subf. forma nothosubsp. nothovar. nothof. nothosect. nothoser.",
    "fam. subfam. trib. subtrib. gen. convar. cv. ord.",
  ]
    .join(" ")
    .split(" "),
);
/** Notes of use: shown upright, not part of the name. */
const usageNotes = new Set(
  "sp. spp. nov. agg. s.l. s.lat. s.str. s.s. ined. cf. aff. ? comb. nom. stat. auct. auctt. non sensu hort.".split(" "),
);
/** After these the rest of the string is about authors. */
const authorNotes = new Set(["auct.", "auctt.", "non", "sensu", "hort."]);
/** Small words that begin or join authors when a capital follows or an author stands before. */
const authorWords = new Set("de du des von van der den di da dos la le zu zum ex in et al. al fil. f. bis & filius".split(" "));

const sign = "\u00D7";
const epithet = /^["\u2018']?\p{Ll}[\p{Ll}\p{M}\u00AD-]*\p{Ll}["\u2019']?$/u;
const capitalWord = /^\p{Lu}[\p{Ll}\p{M}-]+$/u;
const abbreviation = /^\p{Lu}\p{Ll}{0,2}\.$/u;
const isCross = (token: string | undefined): boolean => token === sign || token === "x" || token === "X";

type Kind = "name" | "rank" | "note" | "author" | "cross" | "joined-cross";
interface Token {
  readonly text: string;
  readonly kind: Kind;
}

/** Splits "?obscurum" and "×smithiana" so that every mark is a token of its own. */
const words = (name: string): string[] =>
  name
    .normalize("NFC")
    .trim()
    .split(/\s+/u)
    .filter((word) => word !== "")
    .flatMap((word) => {
      const first = word[0] ?? "";
      return word.length > 1 && (first === sign || first === "?") ? [first, word.slice(1)] : [word];
    });

/** What each word is, from left to right. One name of a formula ends at the sign and the next begins. */
const classify = (name: string): Token[] => {
  const all = words(name);
  const tokens: Token[] = [];
  let namedParts = 0;
  let afterRank = false;
  let inAuthor = false;
  let onlyNotes = false;
  all.forEach((text, i) => {
    const next = all[i + 1];
    const put = (kind: Kind): void => {
      tokens.push({ text, kind });
    };
    if (onlyNotes) return put("author");
    if (isCross(text) && i < all.length - 1) {
      const begins = namedParts === 0;
      // A sign before an epithet of a bare genus is a named hybrid; anywhere else it joins the two parents of a formula.
      const ofEpithet = namedParts === 1 && !inAuthor && next !== undefined && epithet.test(next);
      tokens.push({ text: sign, kind: begins || ofEpithet ? "joined-cross" : "cross" });
      if (!begins && !ofEpithet) {
        namedParts = 0;
        inAuthor = false;
        afterRank = false;
      }
      return;
    }
    if (authorNotes.has(text)) {
      onlyNotes = true;
      return put("note");
    }
    const isFormaOfAuthor = text === "f." && inAuthor && !(next !== undefined && epithet.test(next) && !authorWords.has(next));
    if (rankTerms.has(text) && namedParts > 0 && !isFormaOfAuthor) {
      afterRank = true;
      inAuthor = false;
      return put("rank");
    }
    if (usageNotes.has(text)) return put("note");
    if (inAuthor) return put("author");
    const startsAuthor = authorWords.has(text) && next !== undefined && !epithet.test(next) && namedParts > 0;
    if (!startsAuthor && namedParts === 0 && (capitalWord.test(text) || abbreviation.test(text) || epithet.test(text))) {
      namedParts = 1;
      return put("name");
    }
    if (!startsAuthor && namedParts > 0 && (epithet.test(text) || (afterRank && capitalWord.test(text) && namedParts === 1))) {
      namedParts += 1;
      afterRank = false;
      return put("name");
    }
    inAuthor = true;
    return put("author");
  });
  return tokens;
};

const lastIndex = (tokens: readonly Token[], test: (token: Token, index: number) => boolean): number => {
  for (let i = tokens.length - 1; i >= 0; i -= 1) {
    const token = tokens[i];
    if (token !== undefined && test(token, i)) return i;
  }
  return -1;
};

/** Where a word of doubt goes: before the rank term of an infraspecific part, before the epithet, before a genus alone. */
const doubtIndex = (tokens: readonly Token[]): number => {
  const last = lastIndex(tokens, (token) => token.kind === "name");
  if (last <= 0) return 0;
  const before = tokens[last - 1];
  return before?.kind === "rank" || before?.kind === "joined-cross" ? last - 1 : last;
};

const isFormula = (tokens: readonly Token[]): boolean => tokens.some((token) => token.kind === "cross");

/** Puts the authorship where it belongs: at the end, or after the species epithet when the last epithet repeats it. */
const withAuthorship = (tokens: readonly Token[], authorship: string): readonly Token[] => {
  if (authorship === "" || tokens.some((token) => token.kind === "author")) return tokens;
  const author: Token = { text: authorship, kind: "author" };
  const names = tokens.flatMap((token, i) => (token.kind === "name" ? [{ text: token.text, i }] : []));
  const last = names.at(-1);
  const species = names[1];
  const isAutonym = names.length === 3 && !isFormula(tokens) && last?.text === species?.text && species !== undefined;
  if (isAutonym) return [...tokens.slice(0, species.i + 1), author, ...tokens.slice(species.i + 1)];
  // "agg." and "s.l." follow the author of the name they widen or narrow.
  const at = last === undefined || isFormula(tokens) ? tokens.length : last.i + 1;
  return [...tokens.slice(0, at), author, ...tokens.slice(at)];
};

const spansOf = (tokens: readonly Token[]): NameSpan[] => {
  const spans: { text: string; italic: boolean }[] = [];
  tokens.forEach((token, i) => {
    const previous = tokens[i - 1];
    const joined = previous === undefined || previous.kind === "joined-cross" || (previous.kind === "note" && previous.text === "?");
    const italic = token.kind === "name";
    const last = spans.at(-1);
    const gap = joined ? "" : " ";
    if (last !== undefined && last.italic === italic) last.text += gap + token.text;
    else if (last !== undefined && italic) {
      last.text += gap;
      spans.push({ text: token.text, italic });
    } else spans.push({ text: gap + token.text, italic });
  });
  return spans;
};

/**
 * The spans of a name. `authorship` is added where the name itself holds none: after an autonym's species epithet (the
 * final epithet takes no author), else after the last epithet. `qualifier` stands before the doubtful part. A single
 * word of unknown form is taken as a name. The rank is not needed: the rank terms in the name say it.
 *
 * @example
 * nameParts("Epilobium obscurum", "Schreb.") // => [{text: "Epilobium obscurum", italic: true}, {text: " Schreb.", italic: false}]
 */
export const nameParts = (name: string, authorship = "", qualifier: NameQualifier = ""): readonly NameSpan[] => {
  const tokens = withAuthorship(classify(name), authorship.trim());
  if (qualifier === "") return spansOf(tokens);
  const at = isFormula(tokens) ? 0 : doubtIndex(tokens);
  return spansOf([...tokens.slice(0, at), { text: qualifier, kind: "note" }, ...tokens.slice(at)]);
};

/** The spans as plain text. */
export const nameText = (spans: readonly NameSpan[]): string => spans.map((span) => span.text).join("");

/** The spans as HTML: italic parts in `<i lang="la">`, everything escaped. */
export const nameHtml = (spans: readonly NameSpan[]): string =>
  spans.map((span) => (span.italic ? `<i lang="la">${escapeHtml(span.text)}</i>` : escapeHtml(span.text))).join("");

/**
 * The name with its genus shortened to the initial, `E. obscurum`; for repeated mention where no other genus with that
 * initial is about. A genus alone, and every later genus of a formula, stay as they are written.
 */
export const abbreviatedGenus = (name: string): string => {
  const match = /^([\u00D7]?)(\p{Lu})\p{Ll}[\p{L}-]*(\s+.+)$/u.exec(name.trim());
  return match === null ? name.trim() : `${match[1] ?? ""}${match[2] ?? ""}.${match[3] ?? ""}`;
};
