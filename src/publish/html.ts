/**
 * HTML made by template: every string put in is escaped; only what this module made is taken as it is.
 * The tag is not called `html`, so that no formatter puts blanks into the markup.
 */
import { escapeHtml } from "../engine/index.js";

/** Finished, safe markup. */
export interface Html {
  readonly markup: string;
}
type Put = Html | string | number | null | undefined | false | readonly Put[];

const put = (value: Put): string => {
  if (value === null || value === undefined || value === false) return "";
  if (typeof value === "string") return escapeHtml(value);
  if (typeof value === "number") return String(value);
  if ("markup" in value) return value.markup;
  return value.map(put).join("");
};

/** @example safeHtml`<p title="${title}">${children}</p>` */
export const safeHtml = (strings: TemplateStringsArray, ...values: readonly Put[]): Html => ({
  markup: strings.map((text, i) => text + put(values[i])).join(""),
});

/** Markup from elsewhere that is known to be safe: our own drawings, escaped JSON. */
export const trusted = (markup: string): Html => ({ markup });
