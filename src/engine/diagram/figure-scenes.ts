/** Figures made of several organs: the foot of the stem, a node, the tip, the stigma among the petals. */
import { along, bow, cubic, frameAt, resample } from "./curve.js";
import type { PointMm } from "./drawing.js";
import type { FigureParameters } from "./figure-parameters.js";
import { drawBud, drawFlowerSide } from "./flower-side.js";
import { drawPetal, drawStigma } from "./flower.js";
import type { StageId } from "./habit.js";
import { drawLeaf, farLeaf, lowerSide, upperSide, youngLeaf } from "./leaf.js";
import { ink, mix, rimmedWash, step, vary, wash } from "./pen.js";
import type { Pen } from "./pen.js";
import { deadStem, drawStem, drawStemHairs, greenStem } from "./stem.js";
import { drawGround, drawWinterOrgan, winterGrowth } from "./winter-organs.js";

/** Size of a figure's sheet, millimetres. */
export interface Sheet {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A piece of stem with its hairs. */
export function stemPiece(
  pen: Pen,
  p: FigureParameters,
  line: readonly PointMm[],
  diaMm: number,
  id: string,
  detail: 1 | 2,
  stage: StageId,
): void {
  const dia = vary(pen, diaMm, 0.04);
  const radius = (t: number): number => (dia / 2) * (1.02 - 0.04 * t);
  drawStem(pen, {
    line,
    radius,
    tone: stage === "S8" || stage === "S0" ? deadStem : greenStem,
    lines: p.lines,
    detail,
    flush: 0.55,
    measuredAs: id,
    openEnds: true,
  });
  drawStemHairs(pen, { line, radius, kind: p.hair.stem, mm: p.hair.mm, count: p.hair.stem === "spreading" ? 520 : 380, glandCount: 0 });
}

/** The foot of the stem in the litter with what stays over winter. */
export function footOfStem(pen: Pen, p: FigureParameters, stage: StageId, view: "base" | "winter"): Sheet {
  const wide = p.base === "leafy_runners" || p.base === "thread_runners" || p.base === "thick_shoots" || p.base === "scaly_runners";
  const sheet = { widthMm: wide ? 156 : 96, heightMm: 74 };
  const foot: PointMm = [sheet.widthMm * 0.5, 46];
  drawGround(pen, 3, sheet.widthMm - 3, foot[1] - 1, 20, "winter");
  const growth = stage === "S0" ? 1 : winterGrowth(stage);
  const under = p.base === "thick_shoots" || p.base === "scaly_runners";
  if (under) drawWinterOrgan(pen, foot, p.base, p, growth, 1);
  const stems: readonly (readonly [dx: number, lean: number, height: number])[] =
    view === "base"
      ? [
          [-0.6, -7, 36],
          [3.2, 9, 22],
          [-4.2, -14, 15],
        ]
      : [
          [0, 4, 44],
          [-3.5, -8, 18],
        ];
  for (const [dx, lean, height] of stems) {
    const line = resample(
      cubic(
        [foot[0] + dx, foot[1] + 0.6],
        [foot[0] + dx + lean * 0.1, foot[1] - height * 0.4],
        [foot[0] + dx + lean * 0.5, foot[1] - height * 0.75],
        [foot[0] + dx + lean, foot[1] - height],
      ),
      40,
    );
    const dia = vary(pen, p.stemDia, 0.06);
    drawStem(pen, {
      line,
      radius: (t) => (dia / 2) * (1.1 - 0.3 * t),
      tone: stage === "S7" ? greenStem : deadStem,
      lines: p.lines,
      detail: 1,
      flush: 1,
      openEnds: true,
    });
    const end = along(line, 1).at;
    ink(
      pen,
      [
        [end[0] - dia * 0.36, end[1] - 0.4],
        [end[0] - 0.1, end[1] + 0.5],
        [end[0] + dia * 0.38, end[1] - 0.7],
      ],
      { width: 0.9 },
    );
  }
  if (!under) drawWinterOrgan(pen, [foot[0], foot[1] + 0.8], p.base, p, growth, 1);
  drawGround(pen, foot[0] - 14, foot[0] + 14, foot[1] + 4, 9, "winter", true);
  return sheet;
}

/** A pair of leaves where they join the stem. */
export function leafPairAtStem(pen: Pen, p: FigureParameters, sheet: Sheet, stage: StageId): void {
  const cx = sheet.widthMm * 0.5;
  const joint: PointMm = [cx, sheet.heightMm * 0.56];
  const line = resample(bow([cx - 0.6, sheet.heightMm + 3], [cx + 0.8, -3], 0.012), 60);
  const r = p.stemDia / 2;
  const side = (s: 1 | -1): void => {
    const rise = 34 + pen.random.bell() * 3;
    const degrees = s === 1 ? -rise : 180 + rise;
    const clasp = p.leaf.foot === "clasp" ? 0.1 : 0.8;
    const seat: PointMm = [joint[0] + s * r * clasp, joint[1] + (s === 1 ? 0.1 : -0.15)];
    drawLeaf(pen, {
      frame: frameAt(step(seat, degrees, p.leaf.stalk), degrees),
      lenMm: vary(pen, p.leaf.len, 0.04),
      widMm: vary(pen, p.leaf.wid, 0.04),
      widest: p.leaf.widest,
      fullness: p.leaf.fullness,
      foot: p.leaf.foot,
      teeth: p.leaf.teeth,
      toothMm: p.leaf.toothMm,
      stalkMm: p.leaf.stalk,
      bowShare: s * 0.1,
      left: s === 1 ? 1 : 0.8,
      right: s === 1 ? 0.8 : 1,
      tone: upperSide,
      detail: 2,
      hair: { mm: Math.max(0.15, p.hair.mm), dense: p.hair.stem === "spreading" },
      measuredAs: `leaf-${s === 1 ? "right" : "left"}`,
    });
  };
  for (const s of [1, -1] as const)
    drawLeaf(pen, {
      frame: frameAt([joint[0] + s * r * 0.6, joint[1] - 0.6], -90 + s * 24),
      lenMm: p.leaf.len * 0.2,
      widMm: p.leaf.wid * 0.24,
      widest: 0.45,
      fullness: 1.5,
      foot: "wedge",
      teeth: 4,
      toothMm: 0.2,
      stalkMm: 0,
      bowShare: -s * 0.1,
      tone: youngLeaf,
      detail: 1,
      left: 0.9,
      right: 0.8,
    });
  if (p.leaf.foot !== "clasp") for (const s of [1, -1] as const) side(s);
  stemPiece(pen, p, line, p.stemDia, "stem", 2, stage);
  if (p.leaf.foot === "clasp") for (const s of [1, -1] as const) side(s);
  // The joint: a low rim round the stem; with leaves that run down, their edges go on as wings below.
  rimmedWash(
    pen,
    resample(bow([joint[0] - r * 1.06, joint[1] + 0.3], [joint[0] + r * 1.06, joint[1] + 0.3], -0.13), 20).concat(
      resample(bow([joint[0] + r * 1.06, joint[1] - 0.5], [joint[0] - r * 1.06, joint[1] - 0.5], 0.1), 20),
    ),
    "#9fae74",
    0.9,
  );
  ink(pen, bow([joint[0] - r * 1.06, joint[1] + 0.3], [joint[0] + r * 1.06, joint[1] + 0.3], -0.13), { width: 0.9 });
  if (p.leaf.foot === "down")
    for (const s of [1, -1] as const)
      for (const [a, w] of [
        [0.98, 1],
        [0.25, 0.8],
      ] as const) {
        const wing = cubic(
          [joint[0] + s * r * (a + 0.12), joint[1] - 0.4],
          [joint[0] + s * r * (a + 0.1), joint[1] + 3],
          [joint[0] + s * r * a, joint[1] + 7],
          [joint[0] + s * r * (a - 0.02), sheet.heightMm + 2],
          20,
        );
        wash(
          pen,
          [
            ...wing,
            ...wing
              .slice()
              .reverse()
              .map((q): PointMm => [q[0] - s * r * 0.2, q[1]]),
          ],
          mix(upperSide.light, "#ffffff", 0.2),
          0.8,
        );
        ink(pen, wing, { width: 1.2 * w, taper: "end" });
      }
}

/** Two leaves laid flat. */
export function twoLeaves(start: (magnification: number) => Pen, p: FigureParameters, stage: StageId, under: boolean): [Pen, Sheet] {
  const young = stage === "S1" ? 0.5 : 1;
  const len = p.leaf.len * young;
  const wid = p.leaf.wid * young;
  const sheet = { widthMm: (len * 1.12 + p.leaf.stalk) * 1.08 + 3, heightMm: wid * 2.5 + 9 };
  const pen = start(120 / sheet.widthMm);
  for (let i = 0; i < 2; i += 1) {
    const own = pen.random.between(-0.03, 0.05);
    const y = 3 + wid * (0.6 + i * 1.25) + (i === 1 ? 2 : 0);
    drawLeaf(pen, {
      frame: frameAt([2 + p.leaf.stalk + pen.random.between(0, len * 0.05), y], -1 + pen.random.bell() * 1.6),
      lenMm: vary(pen, len, 0.045),
      widMm: vary(pen, wid, 0.05),
      widest: p.leaf.widest,
      fullness: p.leaf.fullness,
      foot: p.leaf.foot,
      teeth: p.leaf.teeth,
      toothMm: p.leaf.toothMm * young,
      stalkMm: p.leaf.stalk * young,
      bowShare: own,
      tone: under ? lowerSide : young < 1 ? youngLeaf : upperSide,
      under,
      detail: 2,
      hair: { mm: Math.max(0.2, p.hair.mm), dense: p.hair.stem === "spreading" },
      measuredAs: `leaf-${i + 1}`,
    });
  }
  return [pen, sheet];
}

/** The tip of a stem with buds, upright or nodding. */
export function stemTip(pen: Pen, p: FigureParameters, sheet: Sheet, stage: StageId): void {
  const { widthMm: w, heightMm: h } = sheet;
  const nod = p.tip === "nodding";
  const foot: PointMm = [w * (nod ? 0.4 : 0.48), h + 4];
  const line = nod
    ? resample(
        [
          ...cubic(foot, [w * 0.36, h * 0.7], [w * 0.38, h * 0.36], [w * 0.47, h * 0.21], 24),
          ...cubic([w * 0.47, h * 0.21], [w * 0.53, h * 0.11], [w * 0.66, h * 0.13], [w * 0.68, h * 0.28], 20).slice(1),
        ],
        80,
      )
    : resample(cubic(foot, [w * 0.46, h * 0.7], [w * 0.53, h * 0.5], [w * 0.5, h * 0.27], 40), 80);
  const radius = (t: number): number => p.stemDia * (0.34 - 0.16 * t);
  const nodes = nod ? [0.2, 0.42, 0.6] : [0.22, 0.5, 0.76];
  const buds = (at: PointMm, degrees: number, spread: number, n: number, size: number): void => {
    for (let i = 0; i < n; i += 1) {
      const a = n === 1 ? 0 : -spread + (2 * spread * i) / (n - 1);
      drawBud(
        pen,
        frameAt(at, degrees + a + pen.random.bell() * 4),
        p.flower,
        p.flower.sepal * size * pen.random.between(0.8, 1.1),
        p.flower.sepal * pen.random.between(0.9, 1.9) * size,
        stage !== "S3" && i % 3 === 1,
      );
    }
  };
  const leaf = (at: PointMm, degrees: number, size: number, s: 1 | -1, far: boolean): void =>
    drawLeaf(pen, {
      frame: frameAt(step(at, degrees, p.leaf.stalk * size), degrees, far ? 0.6 : 0.95, 1),
      lenMm: p.leaf.len * size,
      widMm: p.leaf.wid * size,
      widest: p.leaf.widest,
      fullness: p.leaf.fullness,
      foot: p.leaf.foot,
      teeth: Math.round(p.leaf.teeth * 0.8),
      toothMm: p.leaf.toothMm * size,
      stalkMm: p.leaf.stalk * size,
      bowShare: s * 0.13,
      left: s === 1 ? 1 : 0.6,
      right: s === 1 ? 0.6 : 1,
      tone: far ? farLeaf : size < 0.35 ? youngLeaf : upperSide,
      detail: 1,
    });
  nodes.forEach((t, i) => {
    const { at, degrees } = along(line, t);
    const size = [0.5, 0.4, 0.3][i] ?? 0.3;
    if (i % 2 === 1) leaf(at, degrees - 20, size, 1, true);
    for (const s of [1, -1] as const) if (i > 0) buds(at, degrees + s * 24, 0, 1, 1);
  });
  drawStem(pen, { line, radius, tone: greenStem, lines: p.lines, detail: 1, flush: 0.5 });
  drawStemHairs(pen, {
    line,
    radius,
    kind: p.hair.stem,
    mm: p.hair.mm,
    count: 240,
    glandCount: p.hair.glands === "upper" ? 30 : 0,
    headMm: 0.16,
  });
  nodes.forEach((t, i) => {
    const { at, degrees } = along(line, t);
    const size = [0.5, 0.4, 0.3][i] ?? 0.3;
    if (i % 2 === 0) for (const s of [1, -1] as const) leaf(at, degrees + s * (44 + pen.random.bell() * 4), size, s, false);
    else leaf(at, degrees + 160, size * 0.8, 1, true);
  });
  const end = along(line, 1);
  for (const [a, k] of [
    [-40, 0.24],
    [38, 0.22],
    [-16, 0.17],
  ] as const)
    leaf(end.at, end.degrees + a, k, a > 0 ? 1 : -1, false);
  buds(end.at, end.degrees, 36, 5, 1);
  buds(end.at, end.degrees + 4, 14, 2, 0.75);
}

/** Stigma and anthers before the petals. */
export function stigmaClose(pen: Pen, p: FigureParameters, sheet: Sheet): void {
  const { widthMm: w, heightMm: h } = sheet;
  const unit = p.flower.petal;
  const heart: PointMm = [w * 0.4, h * 1.02];
  for (const deg of [-158, -22, -112, -66])
    drawPetal(pen, {
      frame: frameAt(step(heart, deg, unit * 0.1), deg, 1.25),
      lenMm: unit,
      notch: p.flower.notch,
      colour: mix(p.flower.colour, p.flower.old, 0.3),
      shadeSide: deg < -90 ? -1 : 1,
      fine: true,
      widthShare: 0.9,
    });
  const top: PointMm = [w * 0.53, h * 0.54];
  for (const [x, y, a] of [
    [0.28, 0.44, 20],
    [0.74, 0.6, -30],
    [0.82, 0.4, 12],
  ] as const) {
    const to: PointMm = [w * x, h * y];
    ink(pen, bow(heart, to, 0.08), { width: 5, taper: "none", colour: "#55603f" });
    ink(pen, bow(heart, to, 0.08), { width: 3.6, taper: "none", colour: "#eef0d8" });
    const body = frameAt(to, a);
    for (const s of [-1, 1]) {
      const half = resample(
        cubic(
          [body.e - unit * 0.11, body.f],
          [body.e - unit * 0.08, body.f + s * unit * 0.09],
          [body.e + unit * 0.08, body.f + s * unit * 0.09],
          [body.e + unit * 0.11, body.f],
        ),
        16,
      );
      rimmedWash(pen, half, "#efe3ad");
      ink(pen, half, { width: 1, taper: "none" });
    }
  }
  const style = resample(cubic(heart, [w * 0.42, h * 0.86], [w * 0.47, h * 0.7], top), 30);
  ink(pen, style, { width: 9, taper: "none", colour: "#6f6a4a" });
  ink(pen, style, { width: 7.4, taper: "none", colour: "#f6f2dd" });
  drawStigma(pen, frameAt(top, -58), p.flower.stigma, unit * (p.flower.stigma === "cross" ? 0.5 : 0.46), "side", "stigma");
}

/** The foot of the calyx in side light, with its hairs and glands. */
export function calyxFoot(pen: Pen, p: FigureParameters, sheet: Sheet): void {
  const { heightMm: h } = sheet;
  const r = Math.max(0.62, p.stemDia * 0.2);
  const ovary = 18;
  const shown = 5.6;
  const flower = drawFlowerSide(pen, {
    frame: frameAt([shown - ovary - 3, h * 0.55], -3),
    flower: p.flower,
    ovaryMm: ovary,
    stalkMm: 3,
    ovaryRadiusMm: r,
    openness: 0.55,
    fine: true,
    id: "flower",
    bowShare: 0.01,
  });
  const upper = resample(flower.ovary, 60).slice(42);
  const many = p.hair.glands === "upper" ? 30 : 0;
  drawStemHairs(pen, {
    line: upper,
    radius: (t) => flower.radius((42 + 18 * t) / 60),
    kind: p.hair.stem === "spreading" ? "spreading" : "appressed",
    mm: 0.34,
    count: 190,
    glandCount: many,
    headMm: 0.13,
  });
  const end = along(upper, 1);
  const cup = resample([end.at, step(end.at, end.degrees, p.flower.sepal * 0.4)], 20);
  drawStemHairs(pen, {
    line: cup,
    radius: () => r * 1.2,
    kind: "appressed",
    mm: 0.3,
    count: 60,
    glandCount: p.hair.glands === "absent" ? 0 : p.hair.glands === "calyx_only" ? 7 : 14,
    headMm: 0.13,
  });
}
