/** A paper label with handwriting. */
import { frameAt } from "./curve.js";
import type { PointMm } from "./drawing.js";
import { drawLettering } from "./lettering.js";
import { ink, rimmedWash, wash } from "./pen.js";
import type { Pen } from "./pen.js";

/** A slip of cream paper with handwriting, as stuck in the ground beside a marked plant. */
export function drawPaperLabel(pen: Pen, at: PointMm, w: number, h: number, lines: readonly string[], degrees = 0): void {
  const f = frameAt(at, degrees);
  const q = (x: number, y: number): PointMm => [f.a * x + f.c * y + f.e, f.b * x + f.d * y + f.f];
  wash(pen, [q(0.8, 1), q(w + 0.9, 1), q(w + 0.8, h + 1.1), q(0.8, h + 1)], "#3b352b", 0.2);
  rimmedWash(pen, [q(0, 0), q(w * 0.5, 0.15), q(w, 0), q(w - 0.1, h * 0.6), q(w, h), q(w * 0.4, h - 0.15), q(0, h)], "#f5efdc");
  ink(pen, [q(0, 0), q(w, 0), q(w, h), q(0, h)], { closed: true, taper: "none", width: 0.7 });
  pen.shapes.push({
    kind: "circle",
    at: q(h * 0.12, h * 0.5),
    radiusMm: h * 0.045,
    fill: "#8d7f66",
    stroke: "#3d3a30",
    strokeMm: pen.inkMm,
  });
  const step_ = h / (lines.length + 1);
  lines.forEach((line, i) =>
    drawLettering(pen, q(w * 0.16, step_ * (i + 1) + step_ * 0.22), line, {
      capMm: Math.min(step_ * 0.56, h * 0.26) * (i === 0 ? 1.15 : 0.8),
      degrees,
      colour: "#2b3440",
    }),
  );
}
