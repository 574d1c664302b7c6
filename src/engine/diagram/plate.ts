/**
 * A figure set into a picture as a camera would see it: on a soft ground, turned a little, with a scale card, a paper label
 * and a line that says it is invented. Two layers of SVG come out, the ground to be blurred and the subject in focus, and
 * the places of everything that can be measured, in pixels.
 */
import { ellipse, frameAt, put, smooth, within } from "./curve.js";
import type { Frame } from "./curve.js";
import type { Drawing, Figure, PointMm } from "./drawing.js";
import { drawLettering } from "./lettering.js";
import { drawPaperLabel } from "./paper-label.js";
import { inkColour, mix, newPen, wash } from "./pen.js";
import type { Pen } from "./pen.js";
import { drawScaleCard, drawStaff, scaleCardSize } from "./scale-card.js";
import type { ScaleCardTruth } from "./scale-card.js";
import { shapesToSvg } from "./to-svg.js";

export type GroundKind = "soil" | "litter" | "card" | "hand" | "sky" | "moss" | "whole";

export interface PlateRequest {
  readonly figure: Figure | { readonly drawing: Drawing; readonly truths: Figure["truths"] };
  readonly widthPx: number;
  readonly heightPx: number;
  readonly ground: GroundKind;
  readonly seed: string;
  /** "card" lies beside the figure, "staff" stands beside a whole stem. */
  readonly scale: "none" | "card" | "staff";
  /** Card in another plane: its lengths along and across the rule as a share of what they would be beside the figure. */
  readonly cardFactor?: { readonly along: number; readonly across: number };
  /** Lines on a paper label; none = no label. */
  readonly label?: readonly string[];
  /** Small line along the lower edge. */
  readonly note: string;
  /** The figure fills the whole picture (a landscape). */
  readonly fill?: boolean;
}

/** A length in the picture whose true size is known. */
export interface PlateTruth {
  readonly what: string;
  readonly fromPx: PointMm;
  readonly toPx: PointMm;
  readonly lengthMm: number;
}

export interface Plate {
  /** Coarse shapes in a sixth of the picture's size, to be blurred and enlarged. */
  readonly groundSvg: string;
  /** The subject on a clear ground, in the picture's size. */
  readonly subjectSvg: string;
  /** Pixels to the millimetre in the plane of the figure. */
  readonly pxPerMm: number;
  readonly truths: readonly PlateTruth[];
  /** The rule of the scale card or staff, in pixels; absent when there is none. */
  readonly card?: {
    readonly fromPx: PointMm;
    readonly toPx: PointMm;
    readonly ruleMm: number;
    readonly strokeEveryMm: number;
    readonly cornersPx: readonly PointMm[];
  };
}

/** How many times smaller the ground is drawn than the picture. */
export const groundShrink = 6;

const rules = [
  { ruleMm: 100, strokeEveryMm: 1, numberEveryMm: 10, numbersIn: "cm" },
  { ruleMm: 80, strokeEveryMm: 1, numberEveryMm: 10, numbersIn: "cm" },
  { ruleMm: 50, strokeEveryMm: 1, numberEveryMm: 10, numbersIn: "cm" },
  { ruleMm: 30, strokeEveryMm: 1, numberEveryMm: 10, numbersIn: "cm" },
  { ruleMm: 20, strokeEveryMm: 1, numberEveryMm: 5, numbersIn: "mm" },
  { ruleMm: 10, strokeEveryMm: 0.5, numberEveryMm: 1, numbersIn: "mm" },
  { ruleMm: 5, strokeEveryMm: 0.1, numberEveryMm: 1, numbersIn: "mm" },
] as const;
const smallestRule = { ruleMm: 2, strokeEveryMm: 0.1, numberEveryMm: 1, numbersIn: "mm" } as const;

/** Sets the figure into its picture. Same request, same bytes. */
export function composePlate(request: PlateRequest): Plate {
  const { figure, widthPx: W, heightPx: H } = request;
  const d = figure.drawing;
  const pen0 = newPen(`plate|${request.seed}`, 1);
  const fill = request.fill === true;
  const staff = request.scale === "staff";
  const room = fill
    ? { w: W * 1.05, h: H * 1.05 }
    : staff
      ? { w: W * 0.8, h: H * 0.95 }
      : request.scale === "card"
        ? { w: W * 0.92, h: H * 0.64 }
        : { w: W * 0.9, h: H * 0.86 };
  const pxPerMm = fill ? Math.max(room.w / d.widthMm, room.h / d.heightMm) : Math.min(room.w / d.widthMm, room.h / d.heightMm);
  const turn = fill ? pen0.random.between(-0.7, 0.7) : staff ? pen0.random.between(-1, 1) : pen0.random.between(-4, 4);
  const middle: PointMm = fill
    ? [W / 2, H / 2]
    : staff
      ? [W * 0.55, H * 0.485]
      : request.scale === "card"
        ? [W * 0.5, H * 0.37]
        : [W * 0.5, H * 0.47];
  const place = within(within(frameAt(middle, turn), frameAt([0, 0], 0, pxPerMm)), frameAt([-d.widthMm / 2, -d.heightMm / 2]));

  // Card, label and note are drawn in millimetres of the figure's plane and set in with a plain enlargement.
  const pen = newPen(`beside|${request.seed}`, pxPerMm / 8);
  const toPx = (p: PointMm): PointMm => [p[0] * pxPerMm, p[1] * pxPerMm];
  const w = W / pxPerMm;
  const h = H / pxPerMm;
  let card: ScaleCardTruth | undefined;
  const behind = newPen(`card|${request.seed}`, pxPerMm / 8);
  if (request.scale === "card") {
    const rule =
      rules.find((r) => scaleCardSize(r.ruleMm).widthMm <= w * 0.62 && scaleCardSize(r.ruleMm).heightMm <= h * 0.3) ?? smallestRule;
    const size = scaleCardSize(rule.ruleMm);
    const f = request.cardFactor;
    const at: PointMm =
      f === undefined
        ? [w * 0.58 - size.widthMm * 0.5 + w * pen0.random.between(-0.05, 0.05), h * 0.945 - size.heightMm]
        : [w * 0.5 - size.widthMm * 0.46, h * 0.58];
    const frame: Frame = frameAt(at, pen0.random.between(-2.2, 2.2), f?.along ?? 1, f?.across ?? 1);
    card = drawScaleCard(f === undefined ? pen : behind, { frame, ...rule });
  }
  if (staff) card = drawStaff(pen, [w * 0.115, h * 0.94], Math.floor((h * 0.86) / 100) * 100 || Math.floor((h * 0.86) / 10) * 10);
  if (request.label !== undefined && request.label.length > 0) {
    const lw = w * (staff ? 0.2 : 0.15);
    drawPaperLabel(pen, staff ? [w * 0.76, h * 0.85] : [w * 0.04, h * 0.84], lw, lw * 0.56, request.label, pen0.random.between(-6, 4));
  }
  const cap = 15 / pxPerMm;
  drawLettering(pen, [w - 26 / pxPerMm, h - 22 / pxPerMm], request.note, {
    capMm: cap,
    anchor: "end",
    colour: request.ground === "card" ? "#4d4a42" : "#f3efe2",
    weight: 0.13,
  });

  const matrix = `matrix(${[place.a, place.b, place.c, place.d, place.e, place.f].map((n) => Math.round(n * 1e5) / 1e5).join(" ")})`;
  const subjectSvg =
    `<svg xmlns="http://www.w3.org/2000/svg" width="${W}" height="${H}" viewBox="0 0 ${W} ${H}">` +
    `<g transform="scale(${Math.round(pxPerMm * 1e5) / 1e5})">${shapesToSvg(behind.shapes)}</g>` +
    `<g transform="${matrix}">${shapesToSvg(d.shapes)}</g>` +
    `<g transform="scale(${Math.round(pxPerMm * 1e5) / 1e5})">${shapesToSvg(pen.shapes)}</g></svg>`;
  return {
    groundSvg: groundOf(request),
    subjectSvg,
    pxPerMm,
    truths: figure.truths.map((t) => ({ what: t.what, fromPx: put(place, t.fromMm), toPx: put(place, t.toMm), lengthMm: t.lengthMm })),
    ...(card === undefined
      ? {}
      : {
          card: {
            fromPx: toPx(card.ruleFrom),
            toPx: toPx(card.ruleTo),
            ruleMm: card.ruleMm,
            strokeEveryMm: card.strokeEveryMm,
            cornersPx: card.corners.map(toPx),
          },
        }),
  };
}

/** What the camera sees behind the subject, in broad shapes. */
function groundOf(request: PlateRequest): string {
  const w = Math.round(request.widthPx / groundShrink);
  const h = Math.round(request.heightPx / groundShrink);
  const pen = newPen(`ground|${request.seed}`, 1);
  const tones: Readonly<Record<GroundKind, readonly [base: string, dark: string, light: string]>> = {
    soil: ["#6b5744", "#43362a", "#93795c"],
    litter: ["#7d6a4b", "#4a3b28", "#b09468"],
    card: ["#e4ddcb", "#cfc6b0", "#f1ecdf"],
    hand: ["#5f6f55", "#3f4d3c", "#8a9876"],
    sky: ["#a9b9b4", "#7f9a83", "#dbe3e0"],
    moss: ["#5f6f42", "#3d4a2c", "#8d9a5e"],
    whole: ["#b9c0b0", "#98a08c", "#d9ddd0"],
  };
  const [base, dark, light] = tones[request.ground];
  wash(
    pen,
    [
      [0, 0],
      [w, 0],
      [w, h],
      [0, h],
    ],
    base,
  );
  const r = pen.random;
  if (request.ground === "sky") {
    wash(
      pen,
      [
        [0, 0],
        [w, 0],
        [w, h * 0.5],
        [0, h * 0.5],
      ],
      light,
      0.9,
    );
    wash(
      pen,
      smooth(
        [
          [0, h * 0.5],
          [w * 0.3, h * 0.44],
          [w * 0.7, h * 0.52],
          [w, h * 0.46],
          [w, h * 0.7],
          [0, h * 0.7],
        ],
        6,
        true,
      ),
      "#8ca38c",
      0.9,
    );
    wash(
      pen,
      [
        [0, h * 0.62],
        [w, h * 0.6],
        [w, h],
        [0, h],
      ],
      "#7f9162",
      0.95,
    );
    wash(
      pen,
      [
        [0, h * 0.88],
        [w, h * 0.86],
        [w, h],
        [0, h],
      ],
      "#5f6d45",
      0.95,
    );
  }
  const calm = request.ground === "card" || request.ground === "whole";
  for (let i = 0; i < (calm ? 10 : 70); i += 1) {
    const at: PointMm = [w * r.between(-0.05, 1.05), h * r.between(request.ground === "sky" ? 0.6 : -0.05, 1.05)];
    const size = w * r.between(0.02, calm ? 0.3 : 0.1);
    const [from, to] =
      request.ground === "sky" ? ["#71845a", r.between(0, 1) < 0.5 ? "#4f5f3d" : "#9aab78"] : [base, r.between(0, 1) < 0.5 ? dark : light];
    const tone = mix(from, to, r.between(0.2, 1));
    wash(pen, ellipse(at, size, size * r.between(0.2, 0.8), r.between(0, 180), 14), tone, calm ? 0.35 : 0.6);
  }
  if (request.ground === "hand") {
    const skin = mix("#d3aa8c", "#b98a6c", r.between(0, 1));
    for (const [y, len, tilt] of [
      [0.72, 0.74, -4],
      [0.86, 0.8, -1],
      [1, 0.72, 3],
    ] as const) {
      const frame = frameAt([w * 1.04, h * y], 180 + tilt);
      const p = (x: number, v: number): PointMm => put(frame, [x * w, v * h]);
      wash(
        pen,
        smooth(
          [p(0, -0.085), p(len * 0.5, -0.075), p(len * 0.92, -0.06), p(len, 0), p(len * 0.92, 0.06), p(len * 0.5, 0.08), p(0, 0.085)],
          6,
        ),
        skin,
      );
      wash(
        pen,
        smooth([p(0, -0.085), p(len * 0.5, -0.075), p(len * 0.92, -0.06), p(len * 0.8, -0.02), p(len * 0.4, -0.035), p(0, -0.03)], 6, true),
        mix(skin, "#7a5040", 0.5),
        0.5,
      );
    }
  }
  vignette(pen, w, h, calm ? 0.05 : 0.16);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}" viewBox="0 0 ${w} ${h}">${shapesToSvg(pen.shapes)}</svg>`;
}

/** Dark corners, as a lens gives them: many faint washes that the blur joins. */
function vignette(pen: Pen, w: number, h: number, opacity: number): void {
  for (const [x, y] of [
    [0, 0],
    [w, 0],
    [w, h],
    [0, h],
  ] as const)
    for (const size of [0.42, 0.36, 0.3, 0.24, 0.18, 0.12]) wash(pen, ellipse([x, y], w * size, h * size), inkColour, opacity / 3);
}
