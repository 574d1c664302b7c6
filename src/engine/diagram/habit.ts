/**
 * The whole stem through the year. Height shares by stage and the order of ages (buds above, flowers, green capsules, open
 * capsules below) follow the growth of a plant that flowers from below upwards. So that it does not stand stiff: leaf pairs
 * cross, nodes shorten upwards, the stem bends, buds crowd at the tip, all angles wander.
 */
import { along, band, cubic, frameAt, resample } from "./curve.js";
import type { PointMm } from "./drawing.js";
import type { FigureParameters } from "./figure-parameters.js";
import { drawBud, drawFlowerSide } from "./flower-side.js";
import { drawCapsule, drawOpenCapsule } from "./fruit.js";
import { drawLeaf, farLeaf, reddened, upperSide, withered, youngLeaf } from "./leaf.js";
import type { LeafTone } from "./leaf.js";
import { ink, noteTruth, step } from "./pen.js";
import type { Pen } from "./pen.js";
import { deadStem, drawStem, greenStem, youngStem } from "./stem.js";
import { drawGround, drawWinterOrgan, winterGrowth } from "./winter-organs.js";

export type StageId = "S0" | "S1" | "S2" | "S3" | "S4" | "S5" | "S6" | "S7" | "S8";

/** Height at a stage as a share of the full height. */
const heightShare: Readonly<Record<StageId, number>> = {
  S0: 0.05,
  S1: 0.15,
  S2: 0.55,
  S3: 0.85,
  S4: 0.95,
  S5: 1,
  S6: 1,
  S7: 1,
  S8: 0.95,
};

type Age = "bud" | "flower" | "green" | "open" | "none";

/** What stands in the axil at share u (0 = lowest, 1 = highest) of the flowering part. */
function ageAt(stage: StageId, u: number): Age {
  const limits: Readonly<Record<StageId, readonly [open: number, green: number, flower: number]>> = {
    S0: [0, 0, 0],
    S1: [0, 0, 0],
    S2: [0, 0, 0],
    S3: [0, 0, 0],
    S4: [0, 0, 0.32],
    S5: [0, 0.42, 0.78],
    S6: [0.12, 0.88, 0.93],
    S7: [0.72, 1.1, 1.1],
    S8: [1.1, 1.1, 1.1],
  };
  if (stage === "S0" || stage === "S1" || stage === "S2") return "none";
  const [open, green, flower] = limits[stage];
  return u < open ? "open" : u < green ? "green" : u < flower ? "flower" : "bud";
}

/** Size of the sheet a plant needs at a stage, in millimetres, and where its foot stands. */
export function habitExtent(
  p: FigureParameters,
  stage: StageId,
): { readonly widthMm: number; readonly heightMm: number; readonly foot: PointMm } {
  const height = Math.max(14, p.stemMm * heightShare[stage]);
  const reach = stage === "S0" || winterGrowth(stage) > 0 ? 78 : 0;
  const half = Math.max(p.leaf.len * (stage === "S1" ? 0.85 : 1.25) + 8, reach, height * 0.17, stage >= "S5" ? p.capsule * 1.15 + 12 : 0);
  const margin = Math.max(6, height * 0.03);
  const under = Math.max(14, height * 0.05);
  const above = margin + (stage >= "S5" ? p.capsule * 0.5 : stage >= "S2" ? p.leaf.len * 0.3 : p.leaf.len * 0.45);
  return { widthMm: 2 * half, heightMm: height + above + under, foot: [half, height + above] };
}

/** Draws the plant standing at `foot`. */
export function drawHabit(pen: Pen, p: FigureParameters, stage: StageId, foot: PointMm): void {
  const share = heightShare[stage];
  const H = Math.max(12, p.stemMm * share) * (stage === "S0" ? 1 : pen.random.between(0.99, 1.01));
  const dead = stage === "S8";
  const lean = H * pen.random.between(-0.05, 0.05);
  const sway = H * pen.random.between(0.018, 0.035) * (pen.random.between(0, 1) < 0.5 ? 1 : -1);
  const nodding = p.tip === "nodding" && (stage === "S3" || stage === "S4");
  const line = resample(
    [
      ...cubic(
        foot,
        [foot[0] - sway * 1.6, foot[1] - H * 0.3],
        [foot[0] + sway * 2 + lean * 0.6, foot[1] - H * 0.65],
        [foot[0] + lean, foot[1] - H * (nodding ? 0.975 : 1)],
        40,
      ),
      ...(nodding
        ? cubic(
            [foot[0] + lean, foot[1] - H * 0.975],
            [foot[0] + lean + H * 0.006, foot[1] - H],
            [foot[0] + lean + H * 0.045, foot[1] - H * 1.012],
            [foot[0] + lean + H * 0.05, foot[1] - H * 0.965],
            10,
          ).slice(1)
        : []),
    ],
    160,
  );
  const radius = (t: number): number => (p.stemDia / 2) * Math.max(0.16, 1.12 - 0.86 * t ** 1.15) * Math.min(1, 0.45 + share * 0.6);
  const tone = dead ? deadStem : stage === "S1" || stage === "S2" ? youngStem : greenStem;

  drawGround(
    pen,
    foot[0] - Math.max(16, H * 0.09),
    foot[0] + Math.max(16, H * 0.09),
    foot[1] + 0.5,
    Math.max(6, H * 0.035),
    stage === "S8" || stage === "S0" ? "winter" : "green",
  );
  const organ = winterGrowth(stage);
  if (organ > 0 && H > 30) drawWinterOrgan(pen, foot, p.base, p, organ, 0);
  if (stage === "S0") {
    drawWinterOrgan(pen, foot, p.base, p, 1, 1);
    return;
  }

  const count = stage === "S1" ? 5 : Math.max(4, Math.round(p.nodes * (stage === "S2" ? 0.75 : 1)));
  const nodes = nodePlaces(pen, count);
  const flowering = stage === "S1" || stage === "S2" ? count : Math.round(count * 0.58);
  const leafScale = (i: number): number => {
    const u = i / (count - 1);
    const young = stage === "S1" ? 0.42 : stage === "S2" ? 0.9 : 1;
    const bell = u < 0.4 ? 0.62 + 0.95 * u : 1 - 1.12 * (u - 0.4) ** 1.15;
    return Math.max(0.16, bell) * young;
  };
  // From below upwards, far organs before the stem, near organs after it.
  const far: (() => void)[] = [];
  const near: (() => void)[] = [];
  for (let i = 0; i < count; i += 1) {
    const t = nodes[i] ?? 0;
    const { at, degrees } = along(line, t);
    const u = i / (count - 1);
    const fallen = (dead && (u < 0.55 || pen.random.between(0, 1) < 0.35)) || (stage >= "S6" && u < 0.16);
    const leafTone = (base: LeafTone): LeafTone =>
      dead ? withered : stage === "S7" && pen.random.between(0, 1) < 0.6 - u * 0.5 ? reddened : stage === "S1" ? youngLeaf : base;
    const scale = leafScale(i);
    const rise = (stage === "S1" ? 42 : 52 - 22 * (1 - u)) + (dead ? -62 : 0) + pen.random.bell() * 6;
    if (!fallen) {
      const sideways = i % 2 === 0;
      if (sideways) {
        for (const s of [1, -1] as const)
          near.push(() =>
            sideLeaf(
              pen,
              p,
              at,
              degrees,
              s,
              rise + pen.random.bell() * 6,
              scale * pen.random.between(0.9, 1.08),
              radius(t),
              leafTone(upperSide),
              dead,
            ),
          );
      } else {
        far.push(() => crossLeaf(pen, p, at, -1, scale * 0.9, leafTone(farLeaf)));
        near.push(() => crossLeaf(pen, p, at, 1, scale, leafTone(upperSide)));
      }
      if (!dead && u > 0.25 && u < 0.62 && stage >= "S3" && stage <= "S7") {
        const branched = stage >= "S5" && p.stemMm > 300 && u > 0.28;
        for (const s of [1, -1] as const) {
          const chance = pen.random.between(0, 1);
          if (branched && chance < 0.7)
            (chance < 0.35 ? far : near).push(() =>
              drawBranch(pen, p, at, degrees, s, H * pen.random.between(0.14, 0.24) * (1.3 - u), stage),
            );
          else if (chance < 0.8) near.push(() => axilShoot(pen, p, at, degrees, s, scale));
        }
      }
    }
    if (i >= flowering) {
      const v = (i - flowering) / Math.max(1, count - 1 - flowering);
      const age = ageAt(stage, v);
      const sides: readonly (1 | -1)[] = age === "none" ? [] : [1, -1];
      for (const s of sides) (i % 2 === 0 ? near : far).push(() => flowerOrgan(pen, p, at, degrees, s, age, v, stage));
    }
  }
  for (const draw of far) draw();
  drawStem(pen, { line, radius, tone, lines: p.lines, detail: 0, flush: stage >= "S5" ? 0.9 : 0.4, measuredAs: "stem" });
  for (const draw of near) draw();
  tipOf(pen, p, along(line, 1), stage, leafScale(count - 1));
  const top = line[line.length - 1] ?? foot;
  if (!nodding) noteTruth(pen, "stem height", "stem", middle(band(line, radius), 0), top);
}

/** The middle of the band's start, that is the foot of the stem. */
function middle(outline: readonly PointMm[], i: number): PointMm {
  const a = outline[i] ?? [0, 0];
  const b = outline[outline.length - 1 - i] ?? [0, 0];
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

/** Shares of the stem where nodes stand; gaps shrink upwards. */
function nodePlaces(pen: Pen, count: number): number[] {
  const gaps = Array.from({ length: count }, (_, i) => (1.35 - 0.95 * (i / count)) * pen.random.between(0.88, 1.12));
  const total = gaps.reduce((a, b) => a + b, 0);
  let sum = 0;
  return gaps.map((g) => {
    sum += g;
    return (sum / total) * 0.985;
  });
}

function sideLeaf(
  pen: Pen,
  p: FigureParameters,
  at: PointMm,
  stemDegrees: number,
  side: 1 | -1,
  rise: number,
  scale: number,
  radius: number,
  tone: LeafTone,
  dead: boolean,
): void {
  const degrees = side === 1 ? -rise + (stemDegrees + 90) : 180 + rise + (stemDegrees + 90);
  const from = step(at, side === 1 ? 0 : 180, radius * 0.8);
  // Leaves arch over: the bow of the midrib rises first, then falls.
  const arch = (dead ? -0.16 : 0.13 + 0.05 * pen.random.bell() * 0.5) * (side === 1 ? 1 : -1);
  const turned = pen.random.between(0.42, 0.95);
  drawLeaf(pen, {
    frame: frameAt(step(from, degrees, p.leaf.stalk * scale), degrees, pen.random.between(0.86, 1), 1),
    lenMm: p.leaf.len * scale,
    widMm: p.leaf.wid * scale * (dead ? 0.55 : 1),
    widest: p.leaf.widest,
    fullness: p.leaf.fullness,
    foot: p.leaf.foot,
    teeth: p.leaf.teeth,
    toothMm: p.leaf.toothMm,
    stalkMm: p.leaf.stalk * scale,
    bowShare: arch,
    left: side === 1 ? 1 : turned,
    right: side === 1 ? turned : 1,
    tone,
    detail: scale > 0.5 ? 1 : 0,
    line: 0.9,
  });
}

/** A leaf of a pair that stands across the line of sight: foreshortened, hanging towards or away from the reader. */
function crossLeaf(pen: Pen, p: FigureParameters, at: PointMm, towards: 1 | -1, scale: number, tone: LeafTone): void {
  const degrees = towards === 1 ? 90 + pen.random.between(-42, 42) : -90 + pen.random.between(-36, 36);
  const short = pen.random.between(0.42, 0.6);
  drawLeaf(pen, {
    frame: frameAt(at, degrees, short, 1),
    lenMm: p.leaf.len * scale,
    widMm: p.leaf.wid * scale * 0.82,
    widest: p.leaf.widest,
    fullness: p.leaf.fullness,
    foot: p.leaf.foot,
    teeth: p.leaf.teeth,
    toothMm: p.leaf.toothMm,
    stalkMm: p.leaf.stalk * scale * 0.6,
    bowShare: pen.random.between(-0.1, 0.1),
    left: pen.random.between(0.7, 1),
    right: pen.random.between(0.5, 1),
    tone,
    detail: scale > 0.5 ? 1 : 0,
    line: 0.9,
  });
}

/** A flowering side branch from an axil: two or three small leaf pairs, organs of the stage, buds at its tip. */
function drawBranch(pen: Pen, p: FigureParameters, at: PointMm, stemDegrees: number, side: 1 | -1, lenMm: number, stage: StageId): void {
  const out = stemDegrees + side * pen.random.between(30, 42);
  const line = resample(
    cubic(
      at,
      step(at, out, lenMm * 0.36),
      step(step(at, out, lenMm * 0.5), stemDegrees + side * 8, lenMm * 0.22),
      step(step(at, out, lenMm * 0.55), stemDegrees + side * 3, lenMm * 0.48),
      24,
    ),
    40,
  );
  const radius = (t: number): number => p.stemDia * (0.2 - 0.12 * t);
  const pairs = 4;
  const scaleAt = (i: number): number => 0.42 - 0.075 * i;
  const places = Array.from({ length: pairs }, (_, i) => ({ i, ...along(line, 0.3 + (0.62 * i) / (pairs - 1)) }));
  for (const n of places) if (n.i % 2 === 1) crossLeaf(pen, p, n.at, -1, scaleAt(n.i), farLeaf);
  for (const n of places)
    if (n.i >= 1)
      for (const s of [1, -1] as const)
        flowerOrgan(pen, p, n.at, n.degrees, s, ageAt(stage, (n.i - 1) / (pairs - 1) + 0.12), (n.i - 1) / (pairs - 1), stage);
  drawStem(pen, { line, radius, tone: greenStem, lines: 0, detail: 0, flush: 0.4 });
  for (const n of places) {
    if (n.i % 2 === 0)
      for (const s of [1, -1] as const)
        sideLeaf(
          pen,
          p,
          n.at,
          n.degrees,
          s,
          40 + pen.random.bell() * 7,
          scaleAt(n.i),
          radius(0.5),
          stage === "S7" && pen.random.between(0, 1) < 0.4 ? reddened : upperSide,
          false,
        );
    else crossLeaf(pen, p, n.at, 1, scaleAt(n.i), upperSide);
  }
  tipOf(pen, p, along(line, 1), stage, 0.16);
}

function axilShoot(pen: Pen, p: FigureParameters, at: PointMm, stemDegrees: number, side: 1 | -1, scale: number): void {
  const degrees = stemDegrees + side * pen.random.between(26, 42);
  const size = p.leaf.len * scale * pen.random.between(0.2, 0.36);
  for (const [a, k] of [
    [-14, 1],
    [16, 0.9],
    [2, 0.6],
  ] as const)
    drawLeaf(pen, {
      frame: frameAt(step(at, degrees, size * 0.1), degrees + side * a),
      lenMm: size * k,
      widMm: size * 0.26 * k,
      widest: 0.45,
      fullness: 1.5,
      foot: "wedge",
      teeth: 0,
      toothMm: 0,
      stalkMm: 0,
      bowShare: -side * 0.1,
      tone: youngLeaf,
      detail: 0,
      left: 0.9,
      right: 0.7,
      line: 0.8,
    });
}

function flowerOrgan(
  pen: Pen,
  p: FigureParameters,
  at: PointMm,
  stemDegrees: number,
  side: 1 | -1,
  age: Age,
  v: number,
  stage: StageId,
): void {
  const spread = age === "bud" ? 14 : age === "flower" ? 26 : age === "green" ? 20 : 24;
  const degrees = stemDegrees + side * (spread + pen.random.bell() * 6);
  const frame = frameAt(at, degrees);
  const stalk = p.capsule * 0.14;
  const r = Math.max(0.5, p.stemDia * 0.16);
  const bowShare = side * pen.random.between(0.02, 0.06);
  switch (age) {
    case "bud":
      drawBud(pen, frame, p.flower, p.flower.sepal * (1 - 0.35 * v), p.capsule * (0.32 - 0.16 * v), v < 0.5 && stage !== "S3");
      return;
    case "flower":
      drawFlowerSide(pen, {
        frame,
        flower: p.flower,
        ovaryMm: p.capsule * pen.random.between(0.42, 0.55),
        stalkMm: stalk * 0.6,
        ovaryRadiusMm: r * 0.8,
        openness: pen.random.between(0.6, 1),
        fine: false,
        bowShare,
      });
      return;
    case "green":
      drawCapsule(pen, {
        frame,
        lenMm: p.capsule * Math.min(1, 1.05 - 0.42 * v + pen.random.bell() * 0.03),
        stalkMm: stalk,
        radiusMm: r,
        bowShare,
        fine: false,
      });
      return;
    case "open":
      drawOpenCapsule(pen, {
        frame,
        lenMm: p.capsule * pen.random.between(0.92, 1.03),
        stalkMm: stalk,
        radiusMm: r,
        bowShare,
        fine: false,
        splitShare: pen.random.between(0.6, 0.85),
        seeds: stage === "S8" ? 2 : 9,
        seedMm: Math.max(p.seed.len, pen.inkMm * 1.6),
      });
      return;
    case "none":
      return;
  }
}

function tipOf(
  pen: Pen,
  p: FigureParameters,
  end: { readonly at: PointMm; readonly degrees: number },
  stage: StageId,
  scale: number,
): void {
  const size =
    p.leaf.len * Math.max(0.16, scale) * (stage === "S1" || stage === "S2" ? 1.1 : p.tip === "nodding" && stage <= "S4" ? 0.45 : 0.8);
  if (stage !== "S8" && stage !== "S7")
    for (const a of [-30, 30, -9, 12])
      drawLeaf(pen, {
        frame: frameAt(end.at, end.degrees + a + pen.random.bell() * 4),
        lenMm: size * (Math.abs(a) < 15 ? 0.75 : 1),
        widMm: size * 0.26,
        widest: p.leaf.widest,
        fullness: p.leaf.fullness,
        foot: "rounded",
        teeth: 0,
        toothMm: 0,
        stalkMm: 0,
        bowShare: a > 0 ? -0.1 : 0.1,
        tone: youngLeaf,
        detail: 0,
        left: 0.9,
        right: 0.8,
        line: 0.8,
      });
  if (stage === "S3" || stage === "S4" || stage === "S5") {
    const n = 5;
    for (let i = 0; i < n; i += 1) {
      const a = -34 + (68 * i) / (n - 1) + pen.random.bell() * 5;
      drawBud(
        pen,
        frameAt(end.at, end.degrees + a),
        p.flower,
        p.flower.sepal * pen.random.between(0.62, 0.95),
        p.flower.sepal * pen.random.between(0.6, 1.5),
        stage !== "S3" && i % 2 === 0,
      );
    }
  }
  if (stage === "S8") ink(pen, [end.at, step(end.at, end.degrees + 12, size * 0.6)], { width: 1.4, taper: "end" });
}
