/** Text made safe for HTML and XML. */

const entities: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

/**
 * Text for an element or a quoted attribute: the five marks of HTML become entities, and control characters that no
 * HTML or XML document may hold (all below U+0020 but tab, newline and return; U+007F; lone halves of surrogate pairs)
 * become U+FFFD.
 */
export const escapeHtml = (text: string): string =>
  text
    .replace(
      // oxlint-disable-next-line no-control-regex -- these are just what must not get through
      /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g,
      "\uFFFD",
    )
    .replace(/[&<>"']/g, (mark) => entities[mark] ?? mark);
