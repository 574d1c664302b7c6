/** Writes a drawing as SVG: `viewBox` in millimetres and `width`/`height` in millimetres, so that print is true to scale. */
import type { Drawing, Paint, Shape } from "./drawing.js";

export interface SvgOptions {
  /** Spoken name of the figure; becomes `<title>`. */
  readonly title: string;
  /** What the figure shows, with its values; becomes `<desc>`. */
  readonly desc: string;
  /** Colour of the ground, `#rrggbb`; none = transparent. */
  readonly background?: string;
  /** Print size against true size; 1 (default) = true to scale. `drawing.magnification` gives the ink its intended width. */
  readonly magnify?: number;
  /** Put before each id, so that several figures can stand in one page. Letters, digits, hyphen. */
  readonly idPrefix?: string;
}

/**
 * The drawing as one SVG element with title and description.
 * @throws {RangeError} if `magnify` is not positive and finite
 */
export function toSvg(drawing: Drawing, options: SvgOptions): string {
  const magnify = options.magnify ?? 1;
  if (!(magnify > 0 && Number.isFinite(magnify))) throw new RangeError(`toSvg requires a positive magnification: got ${magnify}`);
  const prefix = options.idPrefix ?? "";
  const { widthMm: w, heightMm: h } = drawing;
  const ground =
    options.background === undefined ? "" : `<rect width="${number(w)}" height="${number(h)}" fill="${escapeXml(options.background)}"/>`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 ${number(w)} ${number(h)}" ` +
    `width="${number(w * magnify)}mm" height="${number(h * magnify)}mm">` +
    `<title>${escapeXml(options.title)}</title><desc>${escapeXml(options.desc)}</desc>` +
    `${ground}${shapesToSvg(drawing.shapes, prefix)}</svg>`
  );
}

/** Shapes as SVG elements, without the frame: for setting several drawings into one picture. */
export function shapesToSvg(shapes: readonly Shape[], idPrefix = ""): string {
  return shapes.map((shape) => shapeToSvg(shape, idPrefix)).join("");
}

function shapeToSvg(shape: Shape, prefix: string): string {
  const id = shape.id === undefined ? "" : ` id="${escapeXml(prefix + shape.id)}"`;
  switch (shape.kind) {
    case "path":
      return `<path${id} d="${shape.d}"${paint(shape)}/>`;
    case "circle":
      return `<circle${id} cx="${number(shape.at[0])}" cy="${number(shape.at[1])}" r="${number(shape.radiusMm)}"${paint(shape)}/>`;
    case "text":
      return (
        `<text${id} x="${number(shape.at[0])}" y="${number(shape.at[1])}" font-size="${number(shape.sizeMm)}" ` +
        `font-family="Source Serif 4 Variable, Source Serif 4, Georgia, serif"${shape.italic === true ? ' font-style="italic"' : ""}` +
        `${shape.anchor === undefined ? "" : ` text-anchor="${shape.anchor}"`}${paint(shape)}>${escapeXml(shape.text)}</text>`
      );
    case "group":
      return `<g${id}${shape.opacity === undefined ? "" : ` opacity="${number(shape.opacity)}"`}>${shapesToSvg(shape.shapes, prefix)}</g>`;
  }
}

function paint(p: Paint): string {
  let out = ` fill="${p.fill ?? "none"}"`;
  if (p.fillOpacity !== undefined && p.fillOpacity < 1) out += ` fill-opacity="${number(p.fillOpacity)}"`;
  if (p.stroke !== undefined) {
    out += ` stroke="${p.stroke}" stroke-width="${number(p.strokeMm ?? 0.25)}" stroke-linecap="round" stroke-linejoin="round"`;
    if (p.strokeOpacity !== undefined && p.strokeOpacity < 1) out += ` stroke-opacity="${number(p.strokeOpacity)}"`;
  }
  return out;
}

/** A number as short text: five decimals at most, never an exponent. */
function number(x: number): string {
  return String(Math.round(x * 1e5) / 1e5);
}

/** Text made safe inside an XML element or attribute. */
function escapeXml(text: string): string {
  return text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;");
}
