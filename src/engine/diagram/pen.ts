/**
 * The hand that draws: ink lines of slightly uneven width, washes, hairs, glands. It collects shapes in drawing order;
 * all positions are millimetres of the plant.
 */
import { between, distance, lineLength, resample } from "./curve.js";
import type { PointMm, Shape, Truth } from "./drawing.js";
import { seededRandom } from "./seeded-random.js";
import type { SeededRandom } from "./seeded-random.js";

export const inkColour = "#1f2a24";
const glandGold = "#e0ac2f";

export interface Pen {
  readonly random: SeededRandom;
  /** Width of the ordinary ink line in millimetres of the plant. */
  readonly inkMm: number;
  readonly magnification: number;
  readonly shapes: Shape[];
  readonly truths: Truth[];
}

/** A pen for a figure that will be printed at `magnification`: there its line is 0.25 mm. */
export function newPen(seed: string, magnification: number): Pen {
  return { random: seededRandom(seed), inkMm: 0.25 / magnification, magnification, shapes: [], truths: [] };
}

/** A colour between two colours `#rrggbb`. */
export function mix(from: string, to: string, t: number): string {
  const channel = (c: string, i: number): number => Number.parseInt(c.slice(1 + 2 * i, 3 + 2 * i), 16);
  return `#${[0, 1, 2]
    .map((i) =>
      Math.round(channel(from, i) + (channel(to, i) - channel(from, i)) * t)
        .toString(16)
        .padStart(2, "0"),
    )
    .join("")}`;
}

/** Path data through the points. */
export function pathData(pen: Pen, points: readonly PointMm[], closed: boolean): string {
  const places = pen.magnification >= 8 ? 4 : pen.magnification < 0.6 ? 2 : 3;
  const factor = 10 ** places;
  const n = (x: number): string => String(Math.round(x * factor) / factor);
  return `M${points.map((p) => `${n(p[0])} ${n(p[1])}`).join("L")}${closed ? "Z" : ""}`;
}

/** The outline without points that would lie closer than 0.16 mm in print. */
function thinned(pen: Pen, outline: readonly PointMm[]): readonly PointMm[] {
  if (outline.length < 14) return outline;
  const least = 0.16 / pen.magnification;
  let last = outline[0] ?? [0, 0];
  return outline.filter((p, i) => {
    if (i !== 0 && i !== outline.length - 1 && distance(p, last) < least) return false;
    last = p;
    return true;
  });
}

/** A flat wash inside an outline. */
export function wash(pen: Pen, full: readonly PointMm[], colour: string, opacity = 1, id?: string): void {
  const outline = id === undefined ? thinned(pen, full) : full;
  pen.shapes.push({
    kind: "path",
    ...(id === undefined ? {} : { id }),
    d: pathData(pen, outline, true),
    fill: colour,
    fillOpacity: opacity,
  });
}

/** A wash with the darker rim that paint leaves where it dries. */
export function rimmedWash(pen: Pen, full: readonly PointMm[], colour: string, opacity = 1, id?: string): void {
  const outline = id === undefined ? thinned(pen, full) : full;
  pen.shapes.push({
    kind: "path",
    ...(id === undefined ? {} : { id }),
    d: pathData(pen, outline, true),
    fill: colour,
    fillOpacity: opacity,
    stroke: mix(colour, "#2a3a2a", 0.35),
    strokeMm: pen.inkMm * 2.4,
    strokeOpacity: 0.22,
  });
}

export interface InkOptions {
  /** Times the ordinary line. */
  readonly width?: number;
  readonly taper?: "none" | "start" | "end" | "both";
  readonly colour?: string;
  readonly opacity?: number;
  readonly closed?: boolean;
}

/** An ink line along the points: a ribbon whose width wanders by about a fifth, thinned at the ends as asked. */
export function ink(pen: Pen, points: readonly PointMm[], options: InkOptions = {}): void {
  if (points.length < 2) return;
  const width = (options.width ?? 1) * pen.inkMm;
  const taper = options.taper ?? "both";
  const source = options.closed === true ? [...points, points[0] ?? [0, 0]] : points;
  // Long smooth lines get one point to about 0.9 mm of print; lines with many points of their own (teeth) keep them.
  const printed = lineLength(source) * pen.magnification;
  const n = Math.max(3, Math.min(200, Math.ceil(printed / 0.9)));
  const line = source.length > 60 && source.length < printed * 4 ? thinned(pen, source) : resample(source, n);
  const knots = Array.from({ length: 9 }, () => pen.random.between(0.72, 1.28));
  const last = line.length - 1;
  const left: PointMm[] = [];
  const right: PointMm[] = [];
  for (let i = 0; i <= last; i += 1) {
    const t = i / last;
    const k = t * 8;
    const j = Math.min(7, Math.floor(k));
    let w = (knots[j] ?? 1) + ((knots[j + 1] ?? 1) - (knots[j] ?? 1)) * (k - j);
    if (taper === "both" || taper === "start") w *= Math.min(1, 0.25 + t * 6);
    if (taper === "both" || taper === "end") w *= Math.min(1, 0.18 + (1 - t) * 2.2);
    const p = line[i] ?? [0, 0];
    const a = line[Math.max(0, i - 1)] ?? p;
    const b = line[Math.min(last, i + 1)] ?? p;
    const l = distance(a, b) || 1;
    const nx = ((b[1] - a[1]) / l) * 0.5 * width * w;
    const ny = (-(b[0] - a[0]) / l) * 0.5 * width * w;
    left.push([p[0] + nx, p[1] + ny]);
    right.push([p[0] - nx, p[1] - ny]);
  }
  pen.shapes.push({
    kind: "path",
    d: pathData(pen, [...left, ...right.reverse()], true),
    fill: options.colour ?? inkColour,
    fillOpacity: options.opacity ?? 1,
  });
}

/** One hair: where it stands, which way it points (degrees), how long, how far it bends (degrees). */
export interface Hair {
  readonly at: PointMm;
  readonly degrees: number;
  readonly lengthMm: number;
  readonly bend?: number;
}

/** Hairs as fine strokes, thick at the foot, thin at the tip, all in one shape. */
export function hairs(
  pen: Pen,
  all: readonly Hair[],
  options: { readonly width?: number; readonly colour?: string; readonly opacity?: number } = {},
): void {
  if (all.length === 0) return;
  const half = 0.5 * (options.width ?? 0.55) * pen.inkMm;
  const parts = all.map((h) => {
    const mid = step(h.at, h.degrees, h.lengthMm * 0.5);
    const tip = step(mid, h.degrees + (h.bend ?? 0), h.lengthMm * 0.5);
    const a = step(h.at, h.degrees + 90, half);
    const b = step(h.at, h.degrees - 90, half);
    const m1 = step(mid, h.degrees + 90, half * 0.7);
    const m2 = step(mid, h.degrees - 90, half * 0.7);
    return pathData(pen, [a, m1, tip, m2, b], true);
  });
  pen.shapes.push({ kind: "path", d: parts.join(""), fill: options.colour ?? inkColour, fillOpacity: options.opacity ?? 0.85 });
}

/** Gland-tipped hairs: a stroke and a gold dot with an ink ring at its end. `headMm` = diameter of the head. */
export function glandHairs(pen: Pen, all: readonly Hair[], headMm: number): void {
  hairs(pen, all, { width: 0.6 });
  for (const h of all) {
    const mid = step(h.at, h.degrees, h.lengthMm * 0.5);
    const tip = step(mid, h.degrees + (h.bend ?? 0), h.lengthMm * 0.5);
    pen.shapes.push({
      kind: "circle",
      at: tip,
      radiusMm: headMm / 2,
      fill: glandGold,
      stroke: inkColour,
      strokeMm: Math.min(pen.inkMm * 0.5, headMm * 0.16),
    });
    pen.shapes.push({ kind: "circle", at: [tip[0] - headMm * 0.13, tip[1] - headMm * 0.15], radiusMm: headMm * 0.12, fill: "#fff6d6" });
  }
}

/** Small pale flecks or dark stipples, all in one shape. */
export function stipple(pen: Pen, points: readonly PointMm[], radiusMm: number, colour = inkColour, opacity = 0.5): void {
  if (points.length === 0) return;
  const parts = points.map((p) => {
    const r = radiusMm * pen.random.between(0.6, 1.25);
    return pathData(
      pen,
      [
        [p[0] - r, p[1]],
        [p[0] - r * 0.3, p[1] - r],
        [p[0] + r, p[1] - r * 0.2],
        [p[0] + r * 0.3, p[1] + r],
      ],
      true,
    );
  });
  pen.shapes.push({ kind: "path", d: parts.join(""), fill: colour, fillOpacity: opacity });
}

/** A point some way off in a direction (degrees, clockwise on screen from the x axis). */
export function step(from: PointMm, degrees: number, mm: number): PointMm {
  const r = (degrees * Math.PI) / 180;
  return [from[0] + Math.cos(r) * mm, from[1] + Math.sin(r) * mm];
}

/** Notes the true length of an organ between two points of the outline `shapeId`. */
export function noteTruth(pen: Pen, what: string, shapeId: string, fromMm: PointMm, toMm: PointMm): void {
  pen.truths.push({ what, shapeId, fromMm, toMm, lengthMm: distance(fromMm, toMm) });
}

/** A value with individual variation: `share` = standard deviation as a share of the value, cut at three of them. */
export function vary(pen: Pen, value: number, share: number): number {
  return value * (1 + share * pen.random.bell());
}

/** Strokes side by side across a band from line `a` to line `b`: shading in the manner of an engraving. */
export function hatch(
  pen: Pen,
  a: readonly PointMm[],
  b: readonly PointMm[],
  count: number,
  options: { readonly opacity?: number; readonly reach?: number; readonly width?: number } = {},
): void {
  const from = resample(a, count);
  const to = resample(b, count);
  const all = from.slice(0, -1).map((p, i) => {
    const reach = (options.reach ?? 1) * pen.random.between(0.55, 1.05);
    const q = between(p, to[i] ?? p, reach);
    return {
      at: p,
      degrees: (Math.atan2(q[1] - p[1], q[0] - p[0]) * 180) / Math.PI,
      lengthMm: distance(p, q),
      bend: pen.random.between(-6, 6),
    };
  });
  hairs(pen, all, { width: options.width ?? 0.45, opacity: options.opacity ?? 0.4 });
}
