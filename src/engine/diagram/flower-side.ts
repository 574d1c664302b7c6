/** A flower or a bud from the side, on its long ovary. */
import { along, band, bow, frameAt, put, smooth, within } from "./curve.js";
import type { Frame } from "./curve.js";
import type { PointMm } from "./drawing.js";
import { hatch, ink, mix, rimmedWash, vary, wash } from "./pen.js";
import type { Pen } from "./pen.js";
import { drawPetal, drawSepal, drawStamen, drawStigma, sepalTone } from "./flower.js";
import type { FlowerParameters } from "./flower.js";

export interface FlowerSideOptions {
  /** Foot of the flower stalk, the flower runs along the frame's x axis. */
  readonly frame: Frame;
  readonly flower: FlowerParameters;
  readonly ovaryMm: number;
  readonly stalkMm: number;
  readonly ovaryRadiusMm: number;
  /** 0 = bud, 1 = fully open. */
  readonly openness: number;
  readonly fine: boolean;
  readonly id?: string;
  readonly bowShare?: number;
}

/** A flower, or a bud, from the side with its long ovary. Returns the middle line of stalk and ovary and its half thickness, for hairs. */
export function drawFlowerSide(pen: Pen, o: FlowerSideOptions): { readonly ovary: PointMm[]; readonly radius: (t: number) => number } {
  const total = o.stalkMm + o.ovaryMm;
  const axis = bow([0, 0], [total, 0], o.bowShare ?? 0.04, 30).map((p) => put(o.frame, p));
  const split = o.stalkMm / total;
  const top = along(axis, 1);
  const r = o.ovaryRadiusMm;
  const radius = (t: number): number =>
    t < split ? r * 0.55 : r * (0.62 + 0.5 * Math.sin(Math.min(1, ((t - split) / (1 - split)) * 1.1) * Math.PI * 0.85));
  const f = frameAt(top.at, top.degrees);
  const { petal, sepal } = o.flower;
  const colour = o.flower.colour;
  const open = o.openness;
  const tube = sepal * 0.28;
  const half = r * 1.25;
  if (open > 0.25) {
    const spread = 30 + 24 * open;
    // far petals, then the pair in the plane of the sheet, then the near one
    drawPetal(pen, {
      frame: within(f, frameAt([tube * 0.8, 0], -9, 0.97, 0.72)),
      lenMm: petal,
      notch: o.flower.notch,
      colour: mix(colour, "#8d6a86", 0.12),
      shadeSide: 1,
      fine: o.fine,
    });
    for (const s of [-1, 1] as const)
      drawPetal(pen, {
        frame: within(f, frameAt([tube * 0.9, s * half * 0.35], s * spread, 1, 0.5)),
        lenMm: vary(pen, petal, 0.03),
        notch: o.flower.notch * 0.7,
        colour,
        shadeSide: s,
        fine: o.fine,
        ...(o.id === undefined ? {} : { id: `${o.id}-petal-${s === -1 ? 1 : 2}` }),
      });
    for (const [y, x] of [
      [-0.2, 0.86],
      [0.16, 0.78],
      [0.02, 0.95],
    ] as const) {
      const to = put(f, [tube + petal * x, petal * y]);
      drawStamen(pen, put(f, [tube, 0]), to, petal * 0.05, top.degrees + 60 * y * 4);
    }
    const sf = within(f, frameAt([tube + petal * 0.82, -petal * 0.06], -4));
    ink(pen, [put(f, [tube, 0]), put(sf, [0, 0])], { width: 1.5, taper: "none", colour: "#e9e6cd" });
    drawStigma(pen, sf, o.flower.stigma, petal * 0.34, "side");
    drawPetal(pen, {
      frame: within(f, frameAt([tube * 0.8, 0], 8, 0.8, 0.82)),
      lenMm: petal,
      notch: o.flower.notch,
      colour: mix(colour, "#ffffff", 0.12),
      shadeSide: -1,
      fine: o.fine,
    });
  } else if (open > 0) {
    const bud = smooth(
      [
        [0, -half * 0.7],
        [sepal * 0.6, -half * 1.35],
        [sepal * 1.15, -half * 0.7],
        [sepal * (1.05 + open), 0],
        [sepal * 1.15, half * 0.7],
        [sepal * 0.6, half * 1.35],
        [0, half * 0.7],
      ].map((p) => put(f, p as unknown as PointMm)),
      6,
      true,
    );
    rimmedWash(pen, bud, colour);
    ink(pen, bud, { closed: true, taper: "none", width: 0.8, colour: mix(colour, "#1f2a24", 0.7) });
  }
  // ovary
  const outline = band(axis, radius);
  rimmedWash(pen, outline, "#a8b67e");
  wash(
    pen,
    band(axis, (t) => -radius(t) * 0.15, radius),
    "#66784a",
    0.4,
  );
  wash(
    pen,
    band(
      axis,
      (t) => radius(t) * 0.6,
      (t) => -radius(t) * 0.1,
    ),
    "#dbe2bb",
    0.6,
  );
  if (o.fine) hatch(pen, band(axis, radius).slice(31).reverse(), axis, 60, { opacity: 0.36, reach: 0.5, width: 0.4 });
  ink(
    pen,
    axis
      .map((p, i) => {
        const { normal } = along(axis, i / 30);
        return [p[0] + normal[0] * radius(i / 30) * 0.25, p[1] + normal[1] * radius(i / 30) * 0.25] as const;
      })
      .slice(Math.ceil(split * 30)),
    { width: 0.5, opacity: 0.55 },
  );
  ink(pen, outline.slice(0, 31), { width: 0.9, taper: "none" });
  ink(pen, outline.slice(31), { width: 1.3, taper: "none" });
  // calyx: short tube, two sepals in profile, one facing
  const cup = smooth(
    [
      [-0.1 * tube, -radius(1)],
      [tube * 0.5, -half * 0.8],
      [tube * 1.1, -half],
      [tube * 1.25, 0],
      [tube * 1.1, half],
      [tube * 0.5, half * 0.8],
      [-0.1 * tube, radius(1)],
    ].map((p) => put(f, p as unknown as PointMm)),
    5,
    true,
  );
  const sepalTurn = open > 0.25 ? 22 + 14 * open : open > 0 ? 7 : 3;
  for (const s of [-1, 1] as const)
    drawSepal(
      pen,
      within(f, frameAt([tube * 0.9, s * half * 0.62], s * sepalTurn)),
      vary(pen, sepal, 0.03),
      o.id === undefined ? undefined : `${o.id}-sepal-${s === -1 ? 1 : 2}`,
      open > 0.25 ? 0.22 : 0.36,
    );
  drawSepal(pen, within(f, frameAt([tube * 0.85, 0], 2 + (open > 0.25 ? 7 : 0), 0.96, 1)), sepal, undefined, open > 0.25 ? 0.3 : 0.4);
  rimmedWash(pen, cup, "#9fb077");
  wash(
    pen,
    cup.map((p, i) => (i < cup.length / 2 ? put(f, [tube * 0.5, 0]) : p)),
    "#66784a",
    0.35,
  );
  ink(pen, cup.slice(0, Math.round(cup.length * 0.36)), { width: 0.8 });
  ink(pen, cup.slice(Math.round(cup.length * 0.56)), { width: 1.1 });
  return { ovary: axis, radius };
}

/** A closed bud on its young ovary, as in a crowded tip. */
export function drawBud(pen: Pen, frame: Frame, flower: FlowerParameters, lenMm: number, ovaryMm: number, showsColour: boolean): void {
  const w = lenMm * 0.36;
  const p = (x: number, y: number): PointMm => put(frame, [x, y]);
  const stalk = band(bow(p(0, 0), p(ovaryMm, 0), 0.04, 8), (t) => w * (0.16 + 0.16 * t));
  rimmedWash(pen, stalk, "#a8b67e");
  ink(pen, stalk.slice(0, 9), { width: 0.8, taper: "none" });
  ink(pen, stalk.slice(9), { width: 1.1, taper: "none" });
  const outline = smooth(
    [
      p(ovaryMm - 0.1, 0),
      p(ovaryMm + lenMm * 0.15, -w * 0.42),
      p(ovaryMm + lenMm * 0.5, -w * 0.52),
      p(ovaryMm + lenMm * 0.85, -w * 0.24),
      p(ovaryMm + lenMm, 0),
      p(ovaryMm + lenMm * 0.85, w * 0.24),
      p(ovaryMm + lenMm * 0.5, w * 0.52),
      p(ovaryMm + lenMm * 0.15, w * 0.42),
    ],
    5,
    true,
  );
  if (showsColour) {
    const cap = smooth(
      [
        p(ovaryMm + lenMm * 0.6, -w * 0.4),
        p(ovaryMm + lenMm * 1.1, -w * 0.34),
        p(ovaryMm + lenMm * 1.3, 0),
        p(ovaryMm + lenMm * 1.1, w * 0.34),
        p(ovaryMm + lenMm * 0.6, w * 0.4),
      ],
      5,
      true,
    );
    rimmedWash(pen, cap, flower.colour);
    ink(pen, cap, { closed: true, taper: "none", width: 0.7, colour: mix(flower.colour, "#1f2a24", 0.6) });
  }
  rimmedWash(pen, outline, sepalTone.body);
  wash(pen, [...outline.slice(Math.floor(outline.length / 2)), p(ovaryMm, 0), p(ovaryMm + lenMm, 0)], sepalTone.shade, 0.35);
  wash(
    pen,
    smooth([p(ovaryMm + lenMm * 0.66, -w * 0.36), p(ovaryMm + lenMm, 0), p(ovaryMm + lenMm * 0.66, w * 0.36)], 4, true),
    sepalTone.tip,
    0.45,
  );
  ink(pen, [p(ovaryMm + lenMm * 0.05, -w * 0.1), p(ovaryMm + lenMm * 0.5, -w * 0.16), p(ovaryMm + lenMm * 0.96, 0)], {
    width: 0.5,
    opacity: 0.75,
  });
  ink(pen, outline, { closed: true, taper: "none", width: 0.95 });
}
