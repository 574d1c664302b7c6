/** Capsules, green and split, and seeds. */
import { along, band, bow, cubic, ellipse, frameAt, put, resample, smooth, within } from "./curve.js";
import type { Frame } from "./curve.js";
import type { PointMm } from "./drawing.js";
import { hairs, hatch, ink, mix, noteTruth, rimmedWash, step, stipple, wash } from "./pen.js";
import type { Hair, Pen } from "./pen.js";

export interface CapsuleOptions {
  /** Foot of the stalk; the capsule runs along the frame's x axis. */
  readonly frame: Frame;
  readonly lenMm: number;
  readonly stalkMm: number;
  readonly radiusMm: number;
  readonly bowShare: number;
  readonly fine: boolean;
  readonly ripe?: boolean;
  readonly measuredAs?: string;
}

/** A closed capsule: slim four-sided body with furrows. Returns its middle line, foot to tip, without the stalk, and its half thickness. */
export function drawCapsule(pen: Pen, o: CapsuleOptions): { readonly line: PointMm[]; readonly radius: (t: number) => number } {
  const body = bow([o.stalkMm, 0], [o.stalkMm + o.lenMm, 0], o.bowShare, o.fine ? 60 : 24).map((p) => put(o.frame, p));
  const radius = (t: number): number =>
    o.radiusMm * (0.55 + 0.5 * Math.sin(Math.min(1, t * 1.02 + 0.12) * Math.PI * 0.92)) * (t > 0.97 ? 0.82 : 1);
  const tone =
    o.ripe === true
      ? { body: "#b39a72", shade: "#755c41", light: "#dac79c", flush: "#8a5f45" }
      : { body: "#a4b479", shade: "#61754a", light: "#d9e2b6", flush: "#a86457" };
  const stalk = [put(o.frame, [0, 0]), put(o.frame, [o.stalkMm * 0.5, -o.bowShare * o.lenMm * 0.03]), body[0] ?? [0, 0]];
  const stalkBand = band(resample(stalk, 10), (t) => o.radiusMm * (0.62 - 0.12 * t));
  rimmedWash(pen, stalkBand, mix(tone.body, tone.flush, 0.3));
  ink(pen, stalkBand.slice(0, 11), { width: 0.8, taper: "none" });
  ink(pen, stalkBand.slice(11), { width: 1.1, taper: "none" });
  const outline = band(body, radius);
  rimmedWash(pen, outline, tone.body, 1, o.measuredAs);
  for (const from of o.fine ? [0, 0.25, 0.5, 0.7] : [0.1])
    wash(
      pen,
      band(body, (t) => -radius(t) * from, radius),
      tone.shade,
      o.fine ? 0.2 : 0.42,
    );
  for (const w of o.fine ? [0.3, 0.2, 0.1] : [0.2])
    wash(
      pen,
      band(
        body,
        (t) => radius(t) * (0.45 + w),
        (t) => -radius(t) * (0.45 - w),
      ),
      tone.light,
      o.fine ? 0.3 : 0.5,
    );
  wash(
    pen,
    band(body, (t) => radius(t) * (t * 1.2 - 0.8), radius),
    tone.flush,
    0.16,
  );
  const furrow = (share: number): PointMm[] =>
    body.map((p, i) => {
      const { normal } = along(body, i / (body.length - 1));
      const r = radius(i / (body.length - 1)) * share;
      return [p[0] + normal[0] * r, p[1] + normal[1] * r];
    });
  ink(pen, furrow(0.18), { width: 0.75, opacity: 0.75 });
  if (o.fine) {
    ink(pen, furrow(-0.55), { width: 0.5, opacity: 0.6 });
    hatch(pen, furrow(-0.96), furrow(-0.5), 130, { opacity: 0.36, reach: 0.8, width: 0.4 });
    hatch(pen, furrow(0.16), furrow(-0.2), 110, { opacity: 0.28, reach: 0.7, width: 0.4 });
  }
  const n = body.length;
  ink(pen, outline.slice(0, n), { width: 0.9, taper: "none" });
  ink(pen, outline.slice(n), { width: 1.35, taper: "none" });
  const tip = body[n - 1] ?? [0, 0];
  const { degrees } = along(body, 1);
  wash(pen, ellipse(tip, o.radiusMm * 0.4, o.radiusMm * 0.55, degrees, 16), "#6e5a40", 0.8);
  ink(pen, ellipse(tip, o.radiusMm * 0.4, o.radiusMm * 0.55, degrees, 16), { closed: true, taper: "none", width: 0.6 });
  if (o.measuredAs !== undefined)
    noteTruth(pen, "capsule length", o.measuredAs, between2(outline[0], outline[outline.length - 1]), between2(outline[n - 1], outline[n]));
  return { line: body, radius };
}

/** Middle of the two corners of a band's end: the end of its middle line. */
function between2(p: PointMm = [0, 0], q: PointMm = [0, 0]): PointMm {
  return [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
}

export interface OpenCapsuleOptions extends CapsuleOptions {
  /** How far it has split, share of its length from the tip. */
  readonly splitShare: number;
  /** Seeds still hanging in the plumes. */
  readonly seeds: number;
  readonly seedMm: number;
}

/** A capsule that has split from the tip: strips curling out, silky plumes with small dark seeds. */
export function drawOpenCapsule(pen: Pen, o: OpenCapsuleOptions): void {
  const closed = o.lenMm * (1 - o.splitShare);
  const arm = o.lenMm * o.splitShare;
  const at = (x: number, y: number): PointMm => put(o.frame, [o.stalkMm + x, y]);
  const strip = (side: number, curl: number, back: boolean, id?: string): void => {
    const line = cubic(
      [closed * 0.98, side * o.radiusMm * 0.25],
      [closed + arm * 0.34, side * o.radiusMm * 0.5],
      [closed + arm * (0.78 - curl * 0.1), side * arm * (0.1 + 0.06 * curl)],
      [closed + arm * (0.94 - 0.3 * curl), side * arm * (0.13 + 0.3 * curl)],
      26,
    ).map((p) => at(p[0], p[1]));
    const w = (t: number): number => o.radiusMm * (back ? 0.42 : 0.5) * (1 - 0.55 * t);
    const outline = band(line, w);
    rimmedWash(pen, outline, back ? "#b9a27a" : "#cdb98f", 1, id);
    wash(
      pen,
      band(line, (t) => -w(t) * 0.1, w),
      "#7d6546",
      back ? 0.5 : 0.3,
    );
    ink(pen, line, { width: 0.45, opacity: 0.6 });
    ink(pen, outline.slice(0, line.length), { width: 0.8, taper: "end" });
    ink(pen, outline.slice(line.length), { width: 1.15, taper: "start" });
  };
  strip(-1, 0.35, true);
  strip(1, 0.25, true);
  // plume: many fine curves from the central column, each with its seed
  const column = [at(closed * 0.9, 0), at(closed + arm * 0.4, 0), at(closed + arm * 0.86, o.radiusMm * 0.2)];
  const plume: Hair[] = [];
  const seedPlaces: { readonly at: PointMm; readonly degrees: number }[] = [];
  const turn = (Math.atan2(o.frame.b, o.frame.a) * 180) / Math.PI;
  for (let i = 0; i < o.seeds; i += 1) {
    const t = pen.random.between(0.05, 1);
    const side = i % 2 === 0 ? 1 : -1;
    const base = along(resample(column, 20), t).at;
    const seat = step(base, turn + side * 75, arm * pen.random.between(0, 0.1));
    seedPlaces.push({ at: seat, degrees: turn + side * pen.random.between(10, 60) });
    const fan = pen.random.between(-28, 28);
    for (let k = 0; k < (o.fine ? 15 : 7); k += 1)
      plume.push({
        at: seat,
        degrees: turn + side * pen.random.between(14, 64) + fan,
        lengthMm: arm * pen.random.between(0.12, 0.28) + (o.fine ? 2.4 : 1.2),
        bend: side * pen.random.between(-4, 34),
      });
  }
  for (const s of seedPlaces)
    wash(pen, ellipse(step(s.at, s.degrees, arm * 0.1), arm * 0.12 + 1, arm * 0.06 + 0.6, s.degrees, 16), "#fffdf6", 0.13);
  hairs(pen, plume, { width: 0.75, colour: "#fffefa", opacity: 0.95 });
  hairs(
    pen,
    plume.filter((_, i) => i % 2 === 0),
    { width: 0.28, opacity: 0.6, colour: "#6d6859" },
  );
  ink(pen, column, { width: 1.4, colour: "#8f7a57" });
  for (const s of seedPlaces) {
    const body = ellipse(step(s.at, s.degrees + 180, o.seedMm * 0.5), o.seedMm * 0.5, o.seedMm * 0.2, s.degrees, 14);
    wash(pen, body, "#6b4a2f");
    ink(pen, body, { closed: true, taper: "none", width: 0.5 });
  }
  strip(-1, 1, false, o.measuredAs === undefined ? undefined : `${o.measuredAs}-strip`);
  strip(1, 0.8, false);
  drawCapsule(pen, {
    frame: within(o.frame, frameAt([0, 0])),
    lenMm: closed,
    stalkMm: o.stalkMm,
    radiusMm: o.radiusMm,
    bowShare: o.bowShare * 0.3,
    fine: o.fine,
    ripe: true,
  });
  ink(pen, [at(closed, -o.radiusMm * 0.5), at(closed * 0.94, 0), at(closed, o.radiusMm * 0.5)], { width: 0.7 });
}

export interface SeedOptions {
  /** Lower (pointed) end of the seed; it runs along the frame's x axis to the plume. */
  readonly frame: Frame;
  readonly lenMm: number;
  /** Length of the pale neck, part of the seed length. */
  readonly neckMm: number;
  readonly ridged: boolean;
  readonly plume: boolean;
  /** An empty seed is shrunken and pale. */
  readonly empty?: boolean;
  readonly measuredAs?: string;
}

/** One seed: obovate body, pimples in rows or joined into ridges, pale neck, plume. */
export function drawSeed(pen: Pen, o: SeedOptions): void {
  const L = o.lenMm - o.neckMm;
  const half = o.lenMm * (o.empty === true ? 0.12 : 0.2);
  const width = (t: number): number => half * (t <= 0 || t >= 1 ? 0 : Math.min(1, t ** 0.62 * (1 - t) ** 0.36 * 1.74));
  const p = (t: number, across: number): PointMm => put(o.frame, [t * L, across * width(t)]);
  const ts = Array.from({ length: 41 }, (_, i) => 0.5 - 0.5 * Math.cos((i / 40) * Math.PI));
  const body = o.empty === true ? "#cbb489" : "#946a42";
  const dark = o.empty === true ? "#8d744c" : "#54361f";
  if (o.plume) {
    const top = put(o.frame, [o.lenMm, 0]);
    const turn = (Math.atan2(o.frame.b, o.frame.a) * 180) / Math.PI;
    const plume: Hair[] = Array.from({ length: 46 }, () => ({
      at: [top[0] + pen.random.between(-0.02, 0.02) * o.lenMm, top[1] + pen.random.between(-0.02, 0.02) * o.lenMm] as const,
      degrees: turn + pen.random.bell() * 13,
      lengthMm: o.lenMm * pen.random.between(1.2, 2.3),
      bend: pen.random.bell() * 5,
    }));
    hairs(pen, plume, { width: 0.9, colour: "#fffefa" });
    hairs(pen, plume, { width: 0.4, opacity: 0.5, colour: "#5a5546" });
  }
  if (o.neckMm > 0) {
    const neck = smooth(
      [
        [L * 0.96, -half * 0.42],
        [o.lenMm - o.neckMm * 0.1, -half * 0.36],
        [o.lenMm, 0],
        [o.lenMm - o.neckMm * 0.1, half * 0.36],
        [L * 0.96, half * 0.42],
      ].map((q) => put(o.frame, q as unknown as PointMm)),
      5,
      true,
    );
    rimmedWash(pen, neck, "#efe2bd");
    ink(pen, neck, { closed: true, taper: "none", width: 0.8 });
  }
  const outline = [
    ...ts.map((t) => p(t, -1)),
    ...ts
      .slice(1, -1)
      .reverse()
      .map((t) => p(t, 1)),
  ];
  const shadow = outline.map((q): PointMm => [q[0] + half * 0.25, q[1] + half * 0.35]);
  wash(pen, shadow, "#3b352b", 0.13);
  const end = put(o.frame, [o.lenMm, 0]);
  wash(
    pen,
    [
      ...ts.slice(0, -1).map((t) => p(t, -1)),
      end,
      ...ts
        .slice(1, -1)
        .reverse()
        .map((t) => p(t, 1)),
    ],
    "#efe2bd",
    1,
    o.measuredAs,
  );
  rimmedWash(pen, outline, body);
  for (const k of [0.75, 0.5, 0.25])
    wash(
      pen,
      [
        ...ts.map((t) => p(t, -1)),
        ...ts
          .slice()
          .reverse()
          .map((t) => p(t, -k * 0.9)),
      ],
      mix(body, "#fff0cf", 0.55),
      0.16,
    );
  for (const k of [0.1, 0.35, 0.6])
    wash(
      pen,
      [
        ...ts.map((t) => p(t, 1)),
        ...ts
          .slice()
          .reverse()
          .map((t) => p(t, k)),
      ],
      dark,
      0.22,
    );
  const rows = [-0.82, -0.5, -0.17, 0.17, 0.5, 0.82];
  const size = o.lenMm * 0.013;
  if (o.ridged) {
    for (const r of [-0.8, -0.42, 0, 0.42, 0.8]) {
      const line = ts.slice(3, -3).map((t) => p(t, r));
      ink(
        pen,
        line.map((q): PointMm => [q[0] - half * 0.04, q[1] - half * 0.05]),
        { width: 1.5, colour: mix(body, "#fff0cf", 0.6), opacity: 0.8 },
      );
      ink(pen, line, { width: 1.25, colour: dark, opacity: 0.9 });
      for (let i = 2; i < line.length; i += 2)
        pen.shapes.push({
          kind: "circle",
          at: line[i] ?? [0, 0],
          radiusMm: size * 0.7,
          fill: mix(body, "#fff0cf", 0.5),
          stroke: dark,
          strokeMm: pen.inkMm * 0.4,
        });
    }
  } else {
    rows.forEach((r, j) => {
      for (let i = 0; i < 17; i += 1) {
        const t = 0.07 + (0.88 * (i + (j % 2) * 0.5)) / 17;
        if (t < 0.97)
          pen.shapes.push({
            kind: "circle",
            at: p(t, r * 0.95),
            radiusMm: size * pen.random.between(0.75, 1.1),
            fill: mix(body, "#fff0cf", 0.5 - r * 0.25),
            stroke: dark,
            strokeMm: pen.inkMm * 0.42,
          });
      }
    });
  }
  stipple(
    pen,
    Array.from({ length: 40 }, () => p(pen.random.between(0.1, 0.92), pen.random.between(0.3, 0.95))),
    size * 0.35,
    dark,
    0.5,
  );
  ink(pen, outline, { closed: true, taper: "none", width: 1.1 });
  if (o.measuredAs !== undefined) noteTruth(pen, "seed length", o.measuredAs, p(0, 0), put(o.frame, [o.lenMm, 0]));
}
