/** A piece of stem: shaded tube, raised lines, hairs lying or spreading, gland hairs; and its cross-section. */
import { along, band, beside, ellipse, resample } from "./curve.js";
import type { PointMm } from "./drawing.js";
import { glandHairs, hairs, hatch, ink, mix, noteTruth, rimmedWash, stipple, wash } from "./pen.js";
import type { Hair, Pen } from "./pen.js";

export interface StemTone {
  readonly body: string;
  readonly shade: string;
  readonly light: string;
  readonly flush: string;
}

export const greenStem: StemTone = { body: "#a9b67c", shade: "#66784a", light: "#d9e0b4", flush: "#a5584c" };
export const youngStem: StemTone = { body: "#b9c58d", shade: "#7b8f58", light: "#e2e8c2", flush: "#b87a6b" };
export const deadStem: StemTone = { body: "#b79d72", shade: "#775c3e", light: "#dccaa0", flush: "#8a5f45" };

export interface StemOptions {
  /** The middle line from the lower to the upper end. */
  readonly line: readonly PointMm[];
  /** Half thickness at share t from the lower end, millimetres. */
  readonly radius: (t: number) => number;
  readonly tone: StemTone;
  readonly lines: 0 | 2 | 4;
  /** 0 = in a whole plant, 1 = seen close, 2 = under the lens. */
  readonly detail: 0 | 1 | 2;
  readonly flush?: number;
  readonly measuredAs?: string;
  readonly openEnds?: boolean;
}

/** Draws the tube with its raised lines. */
export function drawStem(pen: Pen, options: StemOptions): void {
  const { tone, detail } = options;
  const line = resample(options.line, detail === 0 ? 40 : 60);
  const r = options.radius;
  const outline = band(line, r);
  rimmedWash(pen, outline, tone.body, 1, options.measuredAs);
  const steps = detail === 0 ? 2 : 6;
  for (let i = 0; i < steps; i += 1) {
    const from = 0.1 + (0.75 * i) / steps;
    wash(
      pen,
      band(
        line,
        (t) => r(t) * -from,
        (t) => r(t) * 0.98,
      ),
      tone.shade,
      (detail === 0 ? 0.3 : 0.13) + 0.02 * i,
    );
  }
  for (let i = 0; i < steps; i += 1) {
    const half = 0.42 - (0.3 * i) / steps;
    wash(
      pen,
      band(
        line,
        (t) => r(t) * (0.42 + half),
        (t) => r(t) * (half - 0.42),
      ),
      tone.light,
      detail === 0 ? 0.3 : 0.14,
    );
  }
  if ((options.flush ?? 0) > 0)
    wash(
      pen,
      band(
        line,
        (t) => r(t) * (0.1 - t * 0.6),
        (t) => r(t) * 0.96,
      ),
      tone.flush,
      0.32 * (options.flush ?? 0),
    );
  const ridges = options.lines === 4 ? [0.5, -0.36] : options.lines === 2 ? [0.12] : [];
  for (const ridge of ridges) {
    const at = (dx: number): PointMm[] => beside(line, (t) => r(t) * (ridge + dx));
    if (detail > 0) {
      wash(
        pen,
        band(
          line,
          (t) => r(t) * (ridge + 0.1),
          (t) => -r(t) * (ridge - 0.02),
        ),
        mix(tone.light, "#ffffff", 0.25),
        0.85,
      );
      wash(
        pen,
        band(
          line,
          (t) => r(t) * (ridge - 0.03),
          (t) => -r(t) * (ridge - 0.22),
        ),
        tone.shade,
        0.5,
      );
      ink(pen, at(0.11), { width: 0.4, opacity: 0.5 });
      ink(pen, at(-0.04), { width: 0.9, opacity: 0.85 });
    } else ink(pen, at(0), { width: 0.5, opacity: 0.7 });
  }
  if (detail > 0) {
    hatch(
      pen,
      beside(line, (t) => -r(t) * 0.97),
      beside(line, (t) => -r(t) * 0.35),
      detail === 2 ? 110 : 70,
      { opacity: 0.36, reach: 0.8, width: 0.4 },
    );
    const strokes: Hair[] = Array.from({ length: detail === 2 ? 60 : 36 }, () => {
      const { at, normal, degrees } = along(line, pen.random.between(0.02, 0.9));
      const across = pen.random.between(-0.8, 0.7) * r(0.5);
      return { at: [at[0] + normal[0] * across, at[1] + normal[1] * across], degrees, lengthMm: r(0.5) * pen.random.between(0.5, 2.2) };
    });
    hairs(pen, strokes, { width: 0.35, opacity: 0.25 });
  }
  const ends = options.openEnds === true ? "none" : "both";
  ink(pen, beside(line, r), { width: detail === 0 ? 0.85 : 1, taper: ends });
  ink(
    pen,
    beside(line, (t) => -r(t)),
    { width: detail === 0 ? 1.2 : 1.5, taper: ends },
  );
  if (options.measuredAs !== undefined) {
    const i = Math.round(line.length / 2) - 1;
    noteTruth(pen, "stem diameter", options.measuredAs, outline[i] ?? [0, 0], outline[outline.length - 1 - i] ?? [0, 0]);
  }
}

export interface StemHairOptions {
  readonly line: readonly PointMm[];
  readonly radius: (t: number) => number;
  readonly kind: "spreading" | "appressed" | "hairless";
  readonly mm: number;
  /** Hairs in the whole piece. */
  readonly count: number;
  /** Gland hairs in the whole piece; 0 = none. */
  readonly glandCount?: number;
  readonly headMm?: number;
}

/** Hairs of a stem or capsule: lying 12-24 degrees to the surface, or spreading 75-95 degrees. */
export function drawStemHairs(pen: Pen, options: StemHairOptions): void {
  const line = resample(options.line, 60);
  const face: Hair[] = [];
  const profile: Hair[] = [];
  const place = (across: number, t: number): PointMm => {
    const { at, normal } = along(line, t);
    const o = options.radius(t) * across;
    return [at[0] + normal[0] * o, at[1] + normal[1] * o];
  };
  if (options.kind !== "hairless" && options.mm > 0) {
    for (let i = 0; i < options.count; i += 1) {
      const t = pen.random.between(0.015, 0.985);
      const { degrees } = along(line, t);
      const long = options.mm * pen.random.between(0.65, 1.1);
      const outer = i % 2 === 0;
      const across = outer ? (i % 4 === 0 ? 0.985 : -0.985) : pen.random.between(-0.9, 0.9);
      const side = across > 0 ? -1 : 1;
      const angle = options.kind === "spreading" ? pen.random.between(75, 95) : pen.random.between(12, 24);
      const turn = outer ? side * angle : side * angle * Math.min(1, Math.abs(across) + 0.15);
      (outer ? profile : face).push({
        at: place(across, t),
        degrees: degrees + turn,
        lengthMm: outer ? long : long * 0.8,
        bend: options.kind === "spreading" ? pen.random.between(-18, 18) : -side * pen.random.between(4, 26),
      });
    }
    hairs(pen, face, { width: 0.5, opacity: 0.8, colour: "#f7f4e8" });
    hairs(
      pen,
      face.map((h) => ({ ...h, at: [h.at[0] + pen.inkMm * 0.4, h.at[1] + pen.inkMm * 0.2] as const })),
      { width: 0.3, opacity: 0.55 },
    );
    hairs(pen, profile, { width: 0.5, opacity: 0.9 });
  }
  const glands: Hair[] = [];
  for (let i = 0; i < (options.glandCount ?? 0); i += 1) {
    const t = pen.random.between(0.03, 0.97);
    const { degrees } = along(line, t);
    const outer = i % 3 !== 0;
    const across = outer ? (i % 2 === 0 ? 0.98 : -0.98) : pen.random.between(-0.75, 0.75);
    const side = across > 0 ? -1 : 1;
    glands.push({
      at: place(across, t),
      degrees: degrees + side * pen.random.between(70, 100),
      lengthMm: pen.random.between(0.8, 1.15) * Math.max(options.mm, 0.22) * (outer ? 1 : 0.5),
      bend: pen.random.between(-10, 10),
    });
  }
  glandHairs(pen, glands, options.headMm ?? 0.1);
}

/** A stem cut across: r(angle) = R (1 + 0.2 sum exp(-(d / 7 deg)^2)) at each raised line; rind, wood, pith. */
export function drawStemCut(pen: Pen, at: PointMm, radiusMm: number, lines: 0 | 2 | 4, tone: StemTone): void {
  const ridges = lines === 4 ? [42, 137, 221, 318] : lines === 2 ? [60, 240] : [];
  const ring = (share: number, ridgeHeight: number, wobble: number): PointMm[] => {
    const phase = pen.random.between(0, 6);
    return Array.from({ length: 180 }, (_, i) => {
      const deg = i * 2;
      let sum = 0;
      for (const ridge of ridges) {
        const d = Math.abs(((deg - ridge + 540) % 360) - 180);
        sum += Math.exp(-((d / 7) ** 2));
      }
      const a = (deg * Math.PI) / 180;
      const r = radiusMm * share * (1 + ridgeHeight * sum + wobble * Math.sin(3 * a + phase) * 0.5 + wobble * Math.sin(7 * a + phase));
      return [at[0] + Math.cos(a) * r, at[1] + Math.sin(a) * r];
    });
  };
  const outer = ring(1, 0.2, 0);
  wash(pen, ellipse([at[0] + radiusMm * 0.16, at[1] + radiusMm * 0.2], radiusMm * 1.06, radiusMm * 1.02, 0, 60), "#3b3a30", 0.14);
  rimmedWash(pen, outer, tone.shade, 1, "stem-section");
  wash(pen, ring(0.97, 0.2, 0.002), tone.body, 0.55);
  wash(pen, ring(0.86, 0.07, 0.004), mix(tone.light, "#cfd9a0", 0.4), 1);
  rimmedWash(pen, ring(0.74, 0.02, 0.006), "#efe9d2", 1);
  const rays: Hair[] = Array.from({ length: 72 }, (_, i) => {
    const deg = i * 5 + pen.random.between(-1.5, 1.5);
    const a = (deg * Math.PI) / 180;
    const from = radiusMm * 0.52;
    return {
      at: [at[0] + Math.cos(a) * from, at[1] + Math.sin(a) * from],
      degrees: deg,
      lengthMm: radiusMm * pen.random.between(0.14, 0.21),
    };
  });
  wash(pen, ring(0.52, 0, 0.012), "#f8f5ea", 1);
  hairs(pen, rays, { width: 0.6, opacity: 0.5 });
  for (let k = 0; k < 150; k += 1) {
    // Pith cells on a sunflower spiral (golden angle): even spread without rows.
    const share = Math.sqrt((k + 0.5) / 150) * 0.47;
    const a = k * 2.39996 + pen.random.between(-0.1, 0.1);
    pen.shapes.push({
      kind: "circle",
      at: [at[0] + Math.cos(a) * radiusMm * share, at[1] + Math.sin(a) * radiusMm * share],
      radiusMm: radiusMm * 0.032 * pen.random.between(0.75, 1.15),
      fill: "#fffdf6",
      stroke: "#8f8a72",
      strokeMm: pen.inkMm * 0.35,
    });
  }
  const bark: PointMm[] = Array.from({ length: 130 }, () => {
    const a = pen.random.between(0, 2 * Math.PI);
    const r = radiusMm * pen.random.between(0.78, 0.94);
    return [at[0] + Math.cos(a) * r, at[1] + Math.sin(a) * r];
  });
  stipple(pen, bark, pen.inkMm * 0.45, "#3f5136", 0.5);
  ink(pen, ring(0.745, 0.02, 0.006), { width: 0.7, closed: true, taper: "none", opacity: 0.8 });
  ink(pen, ring(0.53, 0, 0.012), { width: 0.45, closed: true, taper: "none", opacity: 0.6 });
  ink(pen, outer, { width: 1.4, closed: true, taper: "none" });
  noteTruth(pen, "stem diameter with lines", "stem-section", outer[0] ?? at, outer[90] ?? at);
}
