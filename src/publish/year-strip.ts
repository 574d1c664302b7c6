/**
 * The year as a drawing: twelve months across, one row a stage, a dot for each visit that saw it, a thick line from the
 * first to the last, a dashed line back to the last visit without it. Readable in black and white; its text alternative
 * says the same.
 */
import { escapeHtml } from "../engine/index.js";
import { dateWords, type Say } from "../words/index.js";
import type { StageRow } from "./account-model.js";

const labelWidth = 176;
const monthWidth = 64;
const rowHeight = 30;
const top = 34;
const width = labelWidth + 12 * monthWidth + 12;
const monthStarts = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365];

/** Horizontal place of a date; a month stands in its middle. Leap days share the place of 28 February. */
const xOf = (date: string): number => {
  const month = Number(date.slice(5, 7));
  const day = date.length === 7 ? 15 : Number(date.slice(8, 10));
  const start = monthStarts[month - 1] ?? 0;
  const end = monthStarts[month] ?? 365;
  return labelWidth + ((start + Math.min(day, end - start) - 0.5) / 365) * 12 * monthWidth;
};
const place = (x: number): string => x.toFixed(1);

/** The strip as an SVG element. */
export const yearStrip = (rows: readonly StageRow[], language: string, say: Say): string => {
  const dates = dateWords(language);
  const height = top + rows.length * rowHeight + 8;
  const months = Array.from({ length: 12 }, (_, i) => {
    const from = labelWidth + ((monthStarts[i] ?? 0) / 365) * 12 * monthWidth;
    const to = labelWidth + ((monthStarts[i + 1] ?? 365) / 365) * 12 * monthWidth;
    const band =
      i % 2 === 0 ? `<rect class="band" x="${place(from)}" y="${top - 4}" width="${place(to - from)}" height="${height - top}"/>` : "";
    return `${band}<text class="month" x="${place((from + to) / 2)}" y="20" text-anchor="middle">${escapeHtml(dates.shortMonth(i + 1))}</text>`;
  });
  const drawn = rows.map((row, i) => {
    const y = top + i * rowHeight + rowHeight / 2 - 4;
    const [first, last] = [row.dates[0], row.dates.at(-1)];
    const label = `<text class="stage" x="${labelWidth - 14}" y="${y + 5}" text-anchor="end">${escapeHtml(row.stage)}</text>`;
    if (first === undefined || last === undefined) return label;
    const sameYear = row.lastWithout !== null && row.lastWithout.slice(0, 4) === first.slice(0, 4);
    const began =
      sameYear && row.lastWithout !== null ? `<path class="began" d="M${place(xOf(row.lastWithout))} ${y}H${place(xOf(first))}"/>` : "";
    const between = first === last ? "" : `<path class="span" d="M${place(xOf(first))} ${y}H${place(xOf(last))}"/>`;
    const dots = row.dates.map((date) => `<circle class="dot" cx="${place(xOf(date))}" cy="${y}" r="5.5"/>`).join("");
    return label + began + between + dots;
  });
  const rowsText = rows.map((row) => say("year.svgRow", { stage: row.stage, dates: row.datesText })).join(" ");
  return [
    `<svg class="year-strip" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="year-strip-title year-strip-desc">`,
    `<title id="year-strip-title">${escapeHtml(say("year.svgTitle"))}</title>`,
    `<desc id="year-strip-desc">${escapeHtml(say("year.svgDesc", { rows: rowsText }))}</desc>`,
    ...months,
    ...drawn,
    "</svg>",
  ].join("");
};
