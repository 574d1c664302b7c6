/** Parts of a flower and the flower from the front. */
import { bow, cubic, ellipse, frameAt, put, smooth, within } from "./curve.js";
import type { Frame } from "./curve.js";
import type { PointMm } from "./drawing.js";
import type { FigureParameters } from "./figure-parameters.js";
import { ink, mix, noteTruth, rimmedWash, stipple, vary, wash } from "./pen.js";
import type { Pen } from "./pen.js";

export type FlowerParameters = FigureParameters["flower"];

export const sepalTone = { body: "#a9bb80", shade: "#6f8752", tip: "#a4665c" };
const anther = "#f0e6b8";
const stigmaWhite = "#fbf7ea";

/** Outline of a petal along +x from its foot at 0, 0: greatest distance of the outline from the foot = `lenMm`. */
function petalOutline(lenMm: number, notch: number, widthShare = 0.8): { readonly outline: PointMm[]; readonly tip: PointMm } {
  const w = widthShare / 2;
  const half = [
    ...cubic([0, 0.045], [0.25, 0.07], [0.42, w * 0.95], [0.7, w], 14).slice(0, -1),
    ...cubic([0.7, w], [0.88, w * 1.04], [0.99, w * 0.8], [1, w * 0.52], 12).slice(0, -1),
    ...cubic([1, w * 0.52], [1.005, w * 0.2], [1 - notch * 0.45, w * 0.12], [1 - notch, 0], 12),
  ];
  const farthest = half.reduce((best, p) => (Math.hypot(p[0], p[1]) > Math.hypot(best[0], best[1]) ? p : best));
  const k = lenMm / Math.hypot(farthest[0], farthest[1]);
  const upper = half.map((p): PointMm => [p[0] * k, -p[1] * k]);
  const lower = half.map((p): PointMm => [p[0] * k, p[1] * k]);
  return { outline: [[0, 0], ...upper, ...lower.slice(0, -1).reverse()], tip: [farthest[0] * k, -farthest[1] * k] };
}

interface PetalOptions {
  readonly frame: Frame;
  readonly lenMm: number;
  readonly notch: number;
  readonly colour: string;
  readonly shadeSide: 1 | -1;
  readonly widthShare?: number;
  readonly id?: string;
  readonly fine?: boolean;
}

/** One petal with veins that fork towards the lobes. */
export function drawPetal(pen: Pen, o: PetalOptions): void {
  const { outline: flat, tip } = petalOutline(o.lenMm, o.notch, o.widthShare ?? 0.8);
  const L = o.lenMm;
  const at = (x: number, y: number): PointMm => put(o.frame, [x * L, y * L]);
  const outline = flat.map((p) => put(o.frame, p));
  const deep = mix(o.colour, "#7a1f66", 0.5);
  const pale = mix(o.colour, "#ffffff", 0.62);
  rimmedWash(pen, outline, mix(o.colour, "#ffffff", 0.12), 1, o.id);
  const scaled = (sx: number, sy: number, dx: number): PointMm[] => flat.map((p) => put(o.frame, [p[0] * sx + dx * L, p[1] * sy]));
  for (const k of [0.78, 0.68, 0.58, 0.48, 0.38]) wash(pen, scaled(k, k * 0.86, 0), pale, 0.26);
  wash(pen, scaled(0.3, 0.36, 0), "#fffdf4", 0.5);
  const w = (o.widthShare ?? 0.8) / 2;
  // One half lies a little in its own shade: from the middle line to the edge of that side.
  const shaded = flat.filter((p) => p[1] * o.shadeSide > 0);
  wash(
    pen,
    (o.shadeSide === 1 ? [...shaded].reverse() : shaded).map((p) => put(o.frame, p)),
    deep,
    0.16,
  );
  const veins: PointMm[][] = [];
  for (const side of [1, -1]) {
    for (const [k, reach] of [
      [0.1, 0.9 - o.notch * 0.7],
      [0.32, 0.9],
      [0.58, 0.88],
      [0.84, 0.74],
    ] as const) {
      const y = side * k * w;
      const main = cubic(
        [0.02 * L, y * 0.1 * L],
        [0.3 * L, y * 0.25 * L],
        [0.5 * L, y * 0.95 * L],
        [reach * L, y * (1.02 + pen.random.between(-0.08, 0.08)) * L],
        12,
      );
      veins.push(main.map((p) => put(o.frame, p)));
      if (o.fine === true) {
        const from = main[7] ?? [0, 0];
        veins.push(
          cubic(
            from,
            [from[0] + 0.1 * L, from[1] + 0.01 * L * side],
            [from[0] + 0.2 * L, from[1] + 0.05 * L * side],
            [Math.min(reach + 0.02, 0.93) * L, from[1] + side * 0.085 * L],
            8,
          ).map((p) => put(o.frame, p)),
        );
      }
    }
  }
  for (const v of veins)
    ink(pen, v, { width: o.fine === true ? 0.75 : 0.5, taper: "end", colour: deep, opacity: o.fine === true ? 0.6 : 0.5 });
  ink(pen, [at(0.05, 0), at(0.5, 0), at(1 - o.notch - 0.02, 0)], { width: 0.6, taper: "end", colour: deep, opacity: 0.7 });
  ink(pen, outline, { width: 0.9, closed: true, taper: "none", colour: mix(deep, "#1f2a24", 0.55) });
  if (o.id !== undefined) noteTruth(pen, "petal length", o.id, put(o.frame, [0, 0]), put(o.frame, tip));
}

/** A sepal: narrow, pointed, reddish at the tip. */
export function drawSepal(pen: Pen, frame: Frame, lenMm: number, id?: string, widthShare = 0.3): void {
  const w = (lenMm * widthShare) / 2;
  const side = (s: 1 | -1): PointMm[] =>
    cubic([0, s * w * 0.75], [lenMm * 0.3, s * w * 1.25], [lenMm * 0.7, s * w * 0.75], [lenMm, 0], 14).map((p) => put(frame, p));
  const top = side(-1);
  const low = side(1);
  rimmedWash(pen, [put(frame, [0, 0]), ...top, ...low.slice(0, -1).reverse()], sepalTone.body, 1, id);
  const rib = [0, 0.3, 0.6, 0.92].map((t) => put(frame, [lenMm * t, 0]));
  wash(pen, [...rib, ...low.slice().reverse()], sepalTone.shade, 0.4);
  wash(pen, [...top.slice(8), ...low.slice(8).reverse()], sepalTone.tip, 0.5);
  ink(pen, rib, { width: 0.5, taper: "end", opacity: 0.7 });
  ink(pen, top, { width: 0.85, taper: "none" });
  ink(pen, low, { width: 1.1, taper: "none" });
  if (id !== undefined) noteTruth(pen, "sepal length", id, put(frame, [0, 0]), put(frame, [lenMm, 0]));
}

/** Stigma from the front or the side; `sizeMm` = span of the cross or length of the club. */
export function drawStigma(pen: Pen, frame: Frame, kind: "cross" | "club", sizeMm: number, view: "front" | "side", id?: string): void {
  const p = (x: number, y: number): PointMm => put(frame, [x * sizeMm, y * sizeMm]);
  const lobe = (points: readonly PointMm[], shade: readonly PointMm[], lobeId?: string): void => {
    rimmedWash(pen, points, stigmaWhite, 1, lobeId);
    wash(pen, shade, "#c9bf98", 0.5);
    ink(pen, points, { closed: true, taper: "none", width: 1 });
  };
  const papillae = (n: number, rx: number, ry: number, cx: number, cy: number): void =>
    stipple(
      pen,
      Array.from({ length: n }, () => {
        const a = pen.random.between(0, 6.283);
        const r = Math.sqrt(pen.random.between(0, 0.85));
        return p(cx + Math.cos(a) * r * rx, cy + Math.sin(a) * r * ry);
      }),
      sizeMm * 0.011,
      "#6d6748",
      0.55,
    );
  if (kind === "club") {
    const raw: PointMm[] =
      view === "front"
        ? [
            [-0.2, 0],
            [-0.16, -0.2],
            [0.02, -0.26],
            [0.2, -0.18],
            [0.24, 0.02],
            [0.16, 0.22],
            [-0.02, 0.25],
            [-0.17, 0.17],
          ]
        : [
            [0, -0.07],
            [0.1, -0.17],
            [0.35, -0.25],
            [0.7, -0.24],
            [0.94, -0.14],
            [1, 0],
            [0.94, 0.14],
            [0.7, 0.24],
            [0.35, 0.24],
            [0.1, 0.16],
            [0, 0.07],
          ];
    const points = smooth(
      raw.map((q) => p(q[0], q[1])),
      6,
      true,
    );
    const shade = smooth(
      raw.map((q) => p(q[0] * 0.92 + 0.03, Math.max(q[1], 0.02))),
      6,
      true,
    );
    lobe(points, shade, id);
    if (view === "side") {
      // The four lobes stay pressed together: faint furrows only.
      for (const y of [-0.09, 0.08])
        ink(pen, cubic(p(0.28, y), p(0.5, y * 1.25), p(0.75, y * 1.1), p(0.93, y * 0.5), 8), { width: 0.55, opacity: 0.5 });
      papillae(90, 0.45, 0.2, 0.52, 0);
    } else papillae(24, 0.2, 0.22, 0.02, 0);
    if (id !== undefined) noteTruth(pen, "stigma length", id, points[30] ?? p(1, 0), points[0] ?? p(0, 0));
    return;
  }
  const turns = view === "front" ? [8, 96, 186, 279] : [-62, -20, 24, 66];
  turns.forEach((turn, i) => {
    const f = within(frame, frameAt([0, 0], turn));
    const L = 0.5 * sizeMm * (view === "front" ? 1 : 1.05) * pen.random.between(0.94, 1.06);
    const curl = (i % 2 === 0 ? 1 : -1) * 0.06;
    const raw: PointMm[] = [
      [0.02, -0.12],
      [0.35, -0.19],
      [0.72, -0.2 + curl],
      [0.97, -0.1 + curl],
      [1, 0.04 + curl],
      [0.85, 0.17 + curl],
      [0.45, 0.19],
      [0.02, 0.12],
    ];
    const points = smooth(
      raw.map((q) => put(f, [q[0] * L, q[1] * L])),
      5,
      true,
    );
    lobe(
      points,
      smooth(
        raw.map((q) => put(f, [q[0] * L, Math.max(q[1], 0.02) * L * 0.95])),
        5,
        true,
      ),
      id === undefined ? undefined : `${id}-${i + 1}`,
    );
    ink(pen, [put(f, [L * 0.2, 0]), put(f, [L * 0.6, curl * L * 0.4]), put(f, [L * 0.88, curl * L])], {
      width: 0.5,
      taper: "end",
      opacity: 0.5,
    });
    stipple(
      pen,
      Array.from({ length: view === "front" ? 12 : 26 }, () =>
        put(f, [L * pen.random.between(0.15, 0.92), L * pen.random.between(-0.13, 0.13)]),
      ),
      sizeMm * 0.011,
      "#6d6748",
      0.55,
    );
  });
}

/** One stamen from its foot to its anther; `size` = half the length of the anther, millimetres. */
export function drawStamen(pen: Pen, from: PointMm, to: PointMm, size: number, degrees: number): void {
  ink(pen, bow(from, to, 0.06), { width: 2.1, taper: "none", colour: "#4d5a3c", opacity: 0.55 });
  ink(pen, bow(from, to, 0.06), { width: 1.3, taper: "none", colour: "#f4f1df" });
  const body = ellipse(to, size, size * 0.62, degrees, 18);
  rimmedWash(pen, body, anther);
  ink(
    pen,
    [
      to,
      ...[0.4, 0.8].map((t): PointMm => [
        to[0] + Math.cos((degrees * Math.PI) / 180) * size * t,
        to[1] + Math.sin((degrees * Math.PI) / 180) * size * t,
      ]),
    ],
    { width: 0.5, opacity: 0.7 },
  );
  ink(pen, body, { closed: true, taper: "none", width: 0.7 });
}

/** A flower from the front: sepals behind at 45 degrees, four petals, eight stamens in two lengths, stigma. */
export function drawFlowerFace(
  pen: Pen,
  at: PointMm,
  flower: FlowerParameters,
  options: { readonly turn?: number; readonly fine?: boolean; readonly id?: string; readonly aged?: number } = {},
): void {
  const turn = options.turn ?? 0;
  const colour = mix(flower.colour, flower.old, options.aged ?? 0.3);
  const throat = flower.petal * 0.13;
  const out = (deg: number, r: number): Frame => {
    const a = (deg * Math.PI) / 180;
    return frameAt([at[0] + Math.cos(a) * r, at[1] + Math.sin(a) * r], deg);
  };
  for (let k = 0; k < 4; k += 1) {
    drawSepal(
      pen,
      out(turn + 45 + 90 * k + pen.random.bell() * 2, throat * 0.7),
      vary(pen, flower.sepal, 0.04),
      options.id === undefined ? undefined : `${options.id}-sepal-${k + 1}`,
    );
  }
  wash(pen, ellipse([at[0] + throat * 0.5, at[1] + throat * 0.7], flower.petal * 0.8, flower.petal * 0.78, 0, 40), "#4a4a3c", 0.06);
  // Neighbouring petals overlap a little: opposite pairs, one pair above the other.
  for (const k of [1, 3, 0, 2]) {
    const deg = turn - 90 + 90 * k + pen.random.bell() * 2.4;
    drawPetal(pen, {
      frame: out(deg, throat),
      lenMm: vary(pen, flower.petal, 0.035),
      notch: flower.notch * pen.random.between(0.92, 1.08),
      colour,
      shadeSide: k === 1 || k === 2 ? 1 : -1,
      widthShare: 0.93 + pen.random.between(-0.03, 0.03),
      fine: options.fine === true,
      ...(options.id === undefined ? {} : { id: `${options.id}-petal-${k + 1}` }),
    });
  }
  rimmedWash(pen, ellipse(at, throat * 1.25, throat * 1.22, 0, 30), "#e9e7bb", 0.9);
  wash(pen, ellipse(at, throat * 0.7, throat * 0.7, 0, 24), "#8f9d5c", 0.6);
  for (let k = 0; k < 8; k += 1) {
    const deg = turn + 22 + 45 * k + pen.random.bell() * 5;
    const r = flower.petal * (k % 2 === 0 ? 0.4 : 0.25) * pen.random.between(0.92, 1.08);
    const a = (deg * Math.PI) / 180;
    drawStamen(
      pen,
      [at[0] + Math.cos(a) * throat * 0.5, at[1] + Math.sin(a) * throat * 0.5],
      [at[0] + Math.cos(a) * r, at[1] + Math.sin(a) * r],
      flower.petal * 0.055,
      deg + 90 + pen.random.bell() * 14,
    );
  }
  drawStigma(pen, frameAt(at, turn + 40), flower.stigma, flower.petal * (flower.stigma === "cross" ? 0.42 : 0.44), "front");
}
