/**
 * The layout of a reference table as CSV, shared by reader and writer and described in docs/guide/table-csv.md: one row a
 * taxon, one column a character, above them rows that begin with `#` and say what the columns are. All `#` rows may be
 * left out; then kinds are read off the cells.
 */

/** Columns that describe the taxon, in the order in which they are written. `taxon` is the only one that must be there. */
export const taxonColumns = [
  "taxon",
  "name",
  "authorship",
  "family",
  "rank",
  "synonyms",
  "status",
  "flower months",
  "band",
  "in one line",
  "expected",
  "cautions",
  "source",
] as const;
export type TaxonColumn = (typeof taxonColumns)[number];

/** A column of vernacular names in one language: `vernacular en`. */
export const vernacularColumn = /^vernacular ([A-Za-z-]{2,12})$/u;

/** Rows above the taxa that describe the character of each column. */
export const characterRows = [
  "#name",
  "#part",
  "#kind",
  "#unit",
  "#states",
  "#absence",
  "#min n",
  "#seen in",
  "#tool",
  "#weight",
  "#group",
  "#only if",
  "#role",
  "#errors",
  "#disturbs",
  "#misreading",
  "#note",
] as const;
export type CharacterRow = (typeof characterRows)[number];

/** Rows that stand for themselves: `#title, text`, `#stage, id, name, ...`, `#source, id, citation, licence`, ... */
export const ownRows = ["#title", "#notice", "#stage", "#source", "#hybrid", "#score"] as const;
export type OwnRow = (typeof ownRows)[number];

/** Parts of a cell that lists several things. */
export const LIST_MARK = "|";

/**
 * A text that a spreadsheet would run as a formula is written with an apostrophe before it (OWASP, CSV injection) and read
 * without. Text that begins with an apostrophe gets a second one, so that reading gives back what was written.
 */
export const guardText = (text: string): string => (/^[=+\-@\t\r']/u.test(text) ? `'${text}` : text);
export const unguardText = (text: string): string => (/^'[=+\-@\t\r']/u.test(text) ? text.slice(1) : text);

/** A list in one cell; the mark itself and the backslash are escaped. */
export const joinList = (items: readonly string[]): string =>
  items.map((item) => item.replaceAll("\\", "\\\\").replaceAll(LIST_MARK, `\\${LIST_MARK}`)).join(` ${LIST_MARK} `);
export const splitList = (cell: string): string[] =>
  cell === ""
    ? []
    : cell.split(/(?<!\\)(?:\\\\)*\|/u).map((item) => item.trim().replaceAll(`\\${LIST_MARK}`, LIST_MARK).replaceAll("\\\\", "\\"));
