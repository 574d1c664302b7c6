/** A printed card for scale: millimetre rule, checker corners, grey patches; and a ranging staff for whole stems. */
import { frameAt, put } from "./curve.js";
import type { Frame } from "./curve.js";
import type { PointMm } from "./drawing.js";
import { drawLettering } from "./lettering.js";
import { inkColour, wash } from "./pen.js";
import type { Pen } from "./pen.js";

export interface ScaleCardOptions {
  /** Upper left corner of the card; the rule runs along the frame's x axis at the card's upper edge. */
  readonly frame: Frame;
  /** Printed length of the rule, millimetres. */
  readonly ruleMm: number;
  /** Distance of two strokes, millimetres: 1, 0.5 or 0.1. */
  readonly strokeEveryMm: number;
  /** A number stands at each so many millimetres. */
  readonly numberEveryMm: number;
  /** "cm" numbers count centimetres, "mm" millimetres. */
  readonly numbersIn: "cm" | "mm";
}

export interface ScaleCardTruth {
  /** Where the first and the last stroke of the rule meet the card's edge, in the drawing. */
  readonly ruleFrom: PointMm;
  readonly ruleTo: PointMm;
  readonly ruleMm: number;
  readonly strokeEveryMm: number;
  /** Middle points of the four checker corners: upper left, upper right, lower right, lower left. */
  readonly corners: readonly PointMm[];
}

/** Width and height of a card with a rule of this length, millimetres. */
export function scaleCardSize(ruleMm: number): { readonly widthMm: number; readonly heightMm: number } {
  return { widthMm: ruleMm * 1.24, heightMm: ruleMm * 0.36 };
}

/** Draws the card; returns where its rule and corners lie. */
export function drawScaleCard(pen: Pen, o: ScaleCardOptions): ScaleCardTruth {
  const { widthMm: w, heightMm: h } = scaleCardSize(o.ruleMm);
  const u = o.ruleMm / 100;
  const p = (x: number, y: number): PointMm => put(o.frame, [x, y]);
  const rect = (x: number, y: number, rw: number, rh: number): PointMm[] => [p(x, y), p(x + rw, y), p(x + rw, y + rh), p(x, y + rh)];
  const paint = (points: readonly PointMm[], colour: string, opacity = 1): void => wash(pen, points, colour, opacity);
  paint(rect(0, 0, w, h), "#f6f4ee");
  paint(rect(0, h - 0.5 * u, w, 0.5 * u), "#c9c4b6", 0.8);
  paint(rect(w - 0.4 * u, 0, 0.4 * u, h), "#c9c4b6", 0.8);
  const x0 = 12 * u;
  const marks = Math.round(o.ruleMm / o.strokeEveryMm);
  const every = Math.round(o.numberEveryMm / o.strokeEveryMm);
  const lineMm = o.strokeEveryMm * 0.22;
  for (let i = 0; i <= marks; i += 1) {
    const long = i % every === 0 ? 8 : i % (every / 2) === 0 ? 6 : 4;
    paint(rect(x0 + i * o.strokeEveryMm - lineMm / 2, 0, lineMm, long * u), inkColour);
    if (i % every === 0) {
      const mm = i * o.strokeEveryMm;
      const text = String(Math.round((o.numbersIn === "cm" ? mm / 10 : mm) * 10) / 10);
      drawLettering(pen, p(x0 + mm, 13 * u), text, {
        capMm: 3.4 * u * scaleOf(o.frame),
        anchor: "middle",
        degrees: turnOf(o.frame),
        weight: 0.15,
      });
    }
  }
  const c = 4 * u;
  const corners: PointMm[] = [];
  for (const [x, y] of [
    [1.2 * u, 1.2 * u],
    [w - 1.2 * u - 2 * c, 1.2 * u],
    [w - 1.2 * u - 2 * c, h - 1.2 * u - 2 * c],
    [1.2 * u, h - 1.2 * u - 2 * c],
  ] as const) {
    paint(rect(x, y, 2 * c, 2 * c), "#ffffff");
    paint(rect(x, y, c, c), "#17191a");
    paint(rect(x + c, y + c, c, c), "#17191a");
    corners.push(p(x + c, y + c));
  }
  const shades = ["#ffffff", "#c4c4c4", "#8a8a8a", "#4f4f4f", "#141414"];
  shades.forEach((shade, i) => {
    paint(rect(x0 + 4 * u + i * 9 * u, 20 * u, 9 * u, 10 * u), inkColour);
    paint(rect(x0 + 4 * u + i * 9 * u + 0.25 * u, 20.25 * u, 8.5 * u, 9.5 * u), shade);
  });
  drawLettering(pen, p(x0 + 55 * u, 25 * u), "Stipule demo", { capMm: 4.4 * u * scaleOf(o.frame), degrees: turnOf(o.frame), weight: 0.14 });
  drawLettering(pen, p(x0 + 55 * u, 31 * u), `${o.numbersIn} - invented plants`, {
    capMm: 2.6 * u * scaleOf(o.frame),
    degrees: turnOf(o.frame),
    weight: 0.12,
  });
  return { ruleFrom: p(x0, 0), ruleTo: p(x0 + o.ruleMm, 0), ruleMm: o.ruleMm, strokeEveryMm: o.strokeEveryMm, corners };
}

/** A staff with bands of 50 mm, black and white, strokes of 10 mm and numbered decimetres, standing at `foot`. */
export function drawStaff(pen: Pen, foot: PointMm, lengthMm: number): ScaleCardTruth {
  const w = 22;
  const f = frameAt(foot, -90);
  const p = (x: number, y: number): PointMm => put(f, [x, y]);
  const rect = (x: number, y: number, rw: number, rh: number): PointMm[] => [p(x, y), p(x + rw, y), p(x + rw, y + rh), p(x, y + rh)];
  wash(pen, rect(-2, 2, lengthMm + 6, w), "#3b3a30", 0.25);
  wash(pen, rect(-6, 0, lengthMm + 12, w), "#f4f1e8");
  for (let x = 0; x < lengthMm; x += 100) wash(pen, rect(x, w * 0.55, 50, w * 0.45), "#17191a");
  for (let x = 50; x < lengthMm; x += 100) wash(pen, rect(x, w * 0.55, 50, w * 0.45), "#c2402a");
  for (let x = 0; x <= lengthMm; x += 10) wash(pen, rect(x - 1.1, 0, 2.2, x % 50 === 0 ? w * 0.5 : w * 0.28), inkColour);
  for (let x = 100; x <= lengthMm; x += 100)
    drawLettering(pen, [foot[0] + w * 0.775, foot[1] - x + 14], String(x / 10), {
      capMm: 5.4,
      anchor: "middle",
      weight: 0.18,
      colour: "#fffdf6",
    });
  return {
    ruleFrom: p(0, 0),
    ruleTo: p(lengthMm, 0),
    ruleMm: lengthMm,
    strokeEveryMm: 10,
    corners: [p(0, 0), p(lengthMm, 0), p(lengthMm, w), p(0, w)],
  };
}

/** Direction of a frame's x axis, degrees. */
function turnOf(frame: Frame): number {
  return (Math.atan2(frame.b, frame.a) * 180) / Math.PI;
}

/** Mean magnification of a frame. */
function scaleOf(frame: Frame): number {
  return Math.sqrt(Math.abs(frame.a * frame.d - frame.b * frame.c));
}
