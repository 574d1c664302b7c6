/**
 * One leaf blade in line and wash. The outline follows a beta curve: half width h(t) = W/2 f(t)/f(q),
 * f(t) = t^a (1-t)^b, from the foot t = 0 to the tip t = 1, widest at q (own construction; the curve family is the
 * density of the beta distribution).
 */
import { along, bow, put } from "./curve.js";
import type { Frame } from "./curve.js";
import type { PointMm } from "./drawing.js";
import type { LeafFoot } from "./figure-parameters.js";
import { hairs, hatch, ink, inkColour, mix, noteTruth, rimmedWash, stipple, wash } from "./pen.js";
import type { Hair, Pen } from "./pen.js";

/** The three colours of a leaf: body, shade, light. */
export interface LeafTone {
  readonly body: string;
  readonly shade: string;
  readonly light: string;
}

export const upperSide: LeafTone = { body: "#9db77c", shade: "#5d7f4f", light: "#cfdcac" };
export const lowerSide: LeafTone = { body: "#bac9a0", shade: "#849a72", light: "#dde5c6" };
export const youngLeaf: LeafTone = { body: "#b4c884", shade: "#7d9a58", light: "#dde6b4" };
export const farLeaf: LeafTone = { body: "#8fa678", shade: "#5f7a58", light: "#b5c69c" };
export const withered: LeafTone = { body: "#b59a6c", shade: "#7c6140", light: "#d8c79d" };
export const reddened: LeafTone = { body: "#b08a6a", shade: "#7e4c42", light: "#d3b58f" };

export interface LeafOptions {
  /** Where the blade meets its stalk (or the stem); the blade runs along the frame's x axis. */
  readonly frame: Frame;
  readonly lenMm: number;
  readonly widMm: number;
  readonly widest: number;
  readonly fullness: number;
  readonly foot: LeafFoot;
  readonly teeth: number;
  readonly toothMm: number;
  readonly stalkMm: number;
  /** Height of the bow of the midrib, share of the length; positive = upwards when the leaf points to the right. */
  readonly bowShare?: number;
  /** Width of the left and right half (seen from the foot) as a share of the true half width: less than 1 = turned away. */
  readonly left?: number;
  readonly right?: number;
  readonly tone: LeafTone;
  /** 0 = a few lines (in a whole plant), 1 = veins, 2 = veins, hatching, hairs (a leaf on its own). */
  readonly detail: 0 | 1 | 2;
  readonly under?: boolean;
  readonly hair?: { readonly mm: number; readonly dense: boolean };
  /** When given, the outline gets this id and length and width are noted as true. */
  readonly measuredAs?: string;
  readonly line?: number;
}

const enough = (x: number, n: number): readonly number[] => Array.from({ length: n }, (_, i) => (i * x) / (n - 1));

/** Half width of the blade as a share of the greatest, and the place of the greatest. */
function bladeProfile(options: Pick<LeafOptions, "widest" | "fullness" | "foot">): {
  readonly half: (t: number) => number;
  readonly widest: number;
} {
  let a = options.fullness * options.widest;
  const b = options.fullness * (1 - options.widest);
  if (options.foot === "rounded" || options.foot === "clasp" || options.foot === "heart") a = Math.min(a, 0.45);
  if (options.foot === "wedge") a = Math.max(a, 0.9);
  const q = a / (a + b);
  const f = (t: number): number => (t <= 0 || t >= 1 ? 0 : t ** a * (1 - t) ** b);
  const top = f(q);
  return { half: (t) => f(t) / top, widest: q };
}

/** Draws the leaf. */
export function drawLeaf(pen: Pen, options: LeafOptions): void {
  const { lenMm, widMm, tone, detail } = options;
  const axis = bow([0, 0], [lenMm, 0], options.bowShare ?? 0, detail === 0 ? 20 : 60);
  const { half, widest } = bladeProfile(options);
  const leftShare = options.left ?? 1;
  const rightShare = options.right ?? 1;
  const spot = (t: number, across: number): PointMm => {
    const { at, normal } = along(axis, t);
    const h = (widMm / 2) * half(t) * across * (across > 0 ? leftShare : rightShare);
    return put(options.frame, [at[0] + normal[0] * h, at[1] + normal[1] * h]);
  };
  const edge = (side: 1 | -1): PointMm[] => edgeLine(pen, options, spot, side, widest);
  const left = edge(1);
  const right = edge(-1);
  const rib = (from: number, to: number): PointMm[] => enough(1, 24).map((u) => put(options.frame, along(axis, from + (to - from) * u).at));
  const outline = [...left, ...right.slice(1, -1).reverse()];
  const line = (options.line ?? 1) * (detail === 2 ? 1.15 : 1);

  drawStalk(pen, options, tone, line);
  rimmedWash(pen, outline, tone.body, 1, options.measuredAs);
  const midrib = rib(0, 0.985);
  wash(pen, [...rib(0, 1), ...right.slice(1, -1).reverse()], tone.shade, options.under === true ? 0.22 : 0.38);
  // Light lies along the middle of the lit half, clear of the teeth.
  wash(
    pen,
    [...enough(1, 30).map((u) => spot(0.03 + 0.93 * u, 0.82)), ...enough(1, 30).map((u) => spot(0.96 - 0.93 * u, 0.5))],
    tone.light,
    0.28,
  );

  const pairs = Math.max(3, Math.min(7, Math.round(lenMm / Math.max(7, widMm * 0.55))));
  const veins = detail === 0 ? [] : veinLines(pen, pairs, spot);
  for (const v of veins) {
    // Each field between two veins sinks a little: shade below the vein, light above it.
    wash(pen, [...v.line, ...v.below.slice().reverse()], tone.shade, options.under === true ? 0.16 : 0.26);
    wash(pen, [...v.line, ...v.above.slice().reverse()], tone.light, 0.3);
  }
  const ribLight = mix(tone.light, "#ffffff", 0.25);
  ink(pen, midrib, { width: detail === 0 ? 1.6 : 4.2, taper: "end", colour: ribLight, opacity: detail === 0 ? 0.7 : 0.9 });
  for (const v of veins) ink(pen, v.line, { width: 2, taper: "end", colour: ribLight, opacity: options.under === true ? 0.9 : 0.6 });
  if (detail === 2) {
    for (const v of veins) hatch(pen, v.line, v.below, 13, { opacity: v.side === -1 ? 0.42 : 0.2, reach: 0.8, width: 0.4 });
    hatch(
      pen,
      rib(0.04, 0.9),
      enough(1, 24).map((u) => spot(0.06 + 0.86 * u, -0.3)),
      46,
      { opacity: 0.34, reach: 0.5, width: 0.4 },
    );
  }
  for (const v of veins) ink(pen, v.line.slice(0, -1), { width: options.under === true ? 0.6 : 0.42, taper: "end", opacity: 0.62 });
  ink(pen, midrib, { width: detail === 0 ? 0.6 : 0.7, taper: "end", opacity: 0.85 });
  if (detail > 0)
    ink(
      pen,
      enough(1, 16).map((u) => spot(0.02 + 0.62 * u, options.under === true ? 0.06 : -0.06)),
      { width: 0.5, taper: "end", opacity: 0.7 },
    );
  ink(pen, left, { width: line * 0.85, taper: "none" });
  ink(pen, right, { width: line * 1.25, taper: "none" });
  if (options.hair !== undefined && detail === 2) drawBladeHairs(pen, options.hair, spot, left, right, options.frame);

  if (options.measuredAs !== undefined) {
    noteTruth(pen, "leaf length", options.measuredAs, spot(0, 0), spot(1, 0));
    noteTruth(pen, "leaf width", options.measuredAs, spot(widest, 1), spot(widest, -1));
    if (options.stalkMm > 0.5)
      noteTruth(pen, "leaf stalk length", `${options.measuredAs}-stalk`, put(options.frame, [-options.stalkMm, 0]), spot(0, 0));
  }
}

/** One edge from foot to tip. Teeth are cut into the curve, so the greatest width stays the given one; a tooth stands at the widest place. */
function edgeLine(pen: Pen, options: LeafOptions, spot: (t: number, across: number) => PointMm, side: 1 | -1, widest: number): PointMm[] {
  const { half } = bladeProfile(options);
  const count = options.detail === 0 ? Math.min(options.teeth, 7) : options.teeth;
  const out: PointMm[] = [];
  const plain = (from: number, to: number, n: number): void => {
    for (let i = 0; i < n; i += 1) out.push(spot(from + ((to - from) * i) / n, side));
  };
  // Fine steps at the foot, where the curve rises steeply.
  for (const t of [0, 0.0005, 0.002, 0.006, 0.012, 0.02, 0.032]) out.push(spot(t, side));
  if (count === 0 || options.toothMm === 0) {
    plain(0.05, widest, 22);
    plain(widest, 0.94, 26);
  } else {
    const stepT = 0.83 / count;
    const before = Math.floor((widest - 0.1) / stepT);
    const tips: number[] = [];
    for (let k = -before; widest + k * stepT < 0.95; k += 1)
      tips.push(widest + k * stepT + (k === 0 ? 0 : pen.random.between(-0.16, 0.16) * stepT));
    const first = tips[0] ?? 0.1;
    plain(0.05, first, Math.max(2, Math.round(first * 24)));
    tips.forEach((t, i) => {
      out.push(spot(t, side));
      const next = tips[i + 1] ?? Math.min(0.965, t + stepT);
      const width = (options.widMm / 2) * Math.max(0.06, half(t));
      const cut = Math.min(0.4, (options.toothMm * pen.random.between(0.75, 1.2) * Math.min(1, 0.45 + half(t))) / width);
      const gap = next - t;
      for (const [share, depth] of [
        [0.1, 0.72],
        [0.2, 1],
        [0.42, 0.62],
        [0.66, 0.3],
        [0.86, 0.09],
      ] as const)
        out.push(spot(t + gap * share, side * (1 - cut * depth)));
    });
  }
  for (const t of [0.965, 0.98, 0.99, 0.996, 1]) out.push(spot(t, side));
  return out;
}

interface VeinLine {
  readonly side: 1 | -1;
  readonly line: PointMm[];
  readonly below: PointMm[];
  readonly above: PointMm[];
}

/** Side veins: they leave the midrib at a narrow angle and bend forward along the edge. */
function veinLines(pen: Pen, pairs: number, spot: (t: number, across: number) => PointMm): VeinLine[] {
  const out: VeinLine[] = [];
  const gap = 0.72 / pairs;
  for (let i = 0; i < pairs; i += 1) {
    for (const side of [1, -1] as const) {
      const start = 0.05 + gap * (i + (side === 1 ? 0 : 0.28)) + pen.random.between(-0.12, 0.12) * gap;
      const reach = Math.min(0.97 - start, 0.19 + 0.03 * pen.random.bell() * 0.5);
      const at = (u: number, lag: number): PointMm =>
        spot(start + lag * gap * (1 - 0.35 * u) + reach * u ** 1.25, side * 0.9 * Math.sin((u * Math.PI) / 2));
      out.push({
        side,
        line: enough(1, 12).map((u) => at(u, 0)),
        below: enough(1, 12).map((u) => at(u, -0.42)),
        above: enough(1, 12).map((u) => at(u, 0.3)),
      });
    }
  }
  return out;
}

function drawStalk(pen: Pen, options: LeafOptions, tone: LeafTone, line: number): void {
  if (options.stalkMm <= 0) return;
  const w = Math.max(options.widMm * 0.045, options.lenMm * 0.012);
  const p = (x: number, y: number): PointMm => put(options.frame, [x, y]);
  const s = options.stalkMm;
  const top = [p(-s, -w * 1.1), p(-s * 0.7, -w), p(-s * 0.3, -w * 0.95), p(0, -w), p(options.lenMm * 0.03, -w * 0.8)];
  const low = [p(-s, w * 1.1), p(-s * 0.7, w), p(-s * 0.3, w * 0.95), p(0, w), p(options.lenMm * 0.03, w * 0.8)];
  const outline = [p(-s, 0), ...top, p(0, 0), ...low.slice().reverse()];
  rimmedWash(
    pen,
    outline,
    mix(tone.body, "#c98f7a", 0.25),
    1,
    options.measuredAs === undefined ? undefined : `${options.measuredAs}-stalk`,
  );
  ink(pen, top, { width: line * 0.8, taper: "none" });
  ink(pen, low, { width: line * 1.1, taper: "none" });
}

function drawBladeHairs(
  pen: Pen,
  hair: { readonly mm: number; readonly dense: boolean },
  spot: (t: number, across: number) => PointMm,
  left: readonly PointMm[],
  right: readonly PointMm[],
  frame: Frame,
): void {
  const turn = (Math.atan2(frame.b, frame.a) * 180) / Math.PI;
  const all: Hair[] = [];
  const mm = Math.max(hair.mm, pen.inkMm * 1.4);
  if (hair.dense) {
    for (let i = 0; i < 520; i += 1) {
      all.push({
        at: spot(pen.random.between(0.03, 0.97), pen.random.between(-0.93, 0.93)),
        degrees: turn + pen.random.between(-28, 28),
        lengthMm: mm * pen.random.between(0.5, 1),
        bend: pen.random.between(-20, 20),
      });
    }
    hairs(pen, all, { width: 0.34, opacity: 0.5, colour: "#f4f1e2" });
  }
  const rim: Hair[] = [];
  for (const [edgePoints, out] of [
    [left, -1],
    [right, 1],
  ] as const) {
    const n = hair.dense ? 60 : 34;
    for (let i = 2; i < n; i += 1) {
      const { at, degrees } = along(edgePoints, (i + pen.random.between(-0.4, 0.4)) / n);
      rim.push({
        at,
        degrees: degrees + out * pen.random.between(25, 55),
        lengthMm: mm * pen.random.between(0.5, 0.9),
        bend: -out * pen.random.between(5, 30),
      });
    }
  }
  hairs(pen, rim, { width: 0.4, opacity: 0.7, colour: inkColour });
  const flecks: PointMm[] = Array.from({ length: 130 }, () => spot(pen.random.between(0.05, 0.95), pen.random.between(-0.9, -0.1)));
  stipple(pen, flecks, pen.inkMm * 0.34, inkColour, 0.28);
}
