/** Small sketches of single states, for character cards and strips of look-alikes: 28 mm square on the sheet, enlarged freely. */
import { bow, cubic, frameAt, resample } from "./curve.js";
import type { Figure, PointMm } from "./drawing.js";
import type { LeafFoot, WinterOrgan } from "./figure-parameters.js";
import { drawBud, drawFlowerSide } from "./flower-side.js";
import { drawFlowerFace, drawPetal, drawStigma } from "./flower.js";
import { drawCapsule, drawSeed } from "./fruit.js";
import { drawLandscape } from "./landscape.js";
import type { Setting } from "./landscape.js";
import { drawLeaf, upperSide, youngLeaf } from "./leaf.js";
import { ink, newPen, step, wash } from "./pen.js";
import type { Pen } from "./pen.js";
import { drawStem, drawStemCut, drawStemHairs, greenStem } from "./stem.js";
import { drawGround, drawWinterOrgan } from "./winter-organs.js";

/** What a sketch shows; nothing here knows the ids of any book's characters. */
export type SketchSpec =
  | { readonly kind: "growth"; readonly pose: "erect" | "ascending" | "creeping" }
  | { readonly kind: "stem-lines"; readonly lines: 0 | 2 | 4 }
  | { readonly kind: "stem-hairs"; readonly hairs: "spreading" | "appressed" | "hairless" }
  | { readonly kind: "glands"; readonly where: "absent" | "calyx_only" | "upper" }
  | { readonly kind: "winter-organ"; readonly organ: WinterOrgan }
  | { readonly kind: "leaf-joint"; readonly joint: "clasping" | "sessile" | "running_down" | "short_stalk" | "long_stalk" }
  | { readonly kind: "leaf-shape"; readonly lengthToWidth: number; readonly widest: number; readonly fullness: number }
  | { readonly kind: "leaf-foot"; readonly foot: LeafFoot }
  | { readonly kind: "leaf-edge"; readonly teeth: number; readonly toothMm: number }
  | { readonly kind: "leaf-hairs"; readonly density: "dense" | "sparse" | "hairless" }
  | { readonly kind: "bud-pose"; readonly pose: "erect" | "nodding" }
  | { readonly kind: "petal-colour"; readonly young: string; readonly old: string }
  | { readonly kind: "petal-notch"; readonly notch: number }
  | { readonly kind: "stigma"; readonly stigma: "cross" | "club" }
  | { readonly kind: "capsule-hairs"; readonly hairs: "appressed" | "glandular" | "hairless" }
  | { readonly kind: "seed-neck"; readonly neck: boolean }
  | { readonly kind: "seed-face"; readonly ridged: boolean }
  | { readonly kind: "setting"; readonly setting: Setting };

/** Side of a sketch on the sheet, millimetres. */
export const sketchMm = 28;

const flower = { petal: 9, notch: 0.3, colour: "#cf7fb5", old: "#cf7fb5", stigma: "club" as const, sepal: 5.5 };
const leafBase = {
  widest: 0.34,
  fullness: 1.4,
  foot: "rounded" as LeafFoot,
  teeth: 12,
  toothMm: 0.5,
  stalkMm: 0,
  tone: upperSide,
  detail: 1 as const,
};

/** Draws the sketch of a state. Same spec and seed, same bytes. */
export function drawSketch(spec: SketchSpec, seed = "sketch"): Figure {
  const pen = newPen(`${spec.kind}|${seed}`, 1);
  paint(pen, spec);
  return {
    drawing: { widthMm: sketchMm, heightMm: sketchMm, magnification: 1, shapes: pen.shapes },
    truths: [],
    title: spec.kind.replace("-", " "),
    description: Object.values(spec).slice(1).map(String).join(", "),
  };
}

function paint(pen: Pen, spec: SketchSpec): void {
  switch (spec.kind) {
    case "growth":
      return growth(pen, spec.pose);
    case "stem-lines": {
      const line = bow([6.5, 29], [8, -1], 0.01, 40);
      drawStem(pen, { line, radius: () => 3.6, tone: greenStem, lines: spec.lines, detail: 1, flush: 0.4 });
      drawStemCut(pen, [20, 14], 5.4, spec.lines, greenStem);
      return;
    }
    case "stem-hairs": {
      const line = bow([12.5, 29], [14.5, -1], 0.012, 40);
      drawStem(pen, { line, radius: () => 4.6, tone: greenStem, lines: 0, detail: 1, flush: 0.3 });
      drawStemHairs(pen, { line, radius: () => 4.6, kind: spec.hairs, mm: spec.hairs === "spreading" ? 4.4 : 1.6, count: 170 });
      return;
    }
    case "glands": {
      const side = drawFlowerSide(pen, {
        frame: frameAt([6, 34], -66),
        flower: { ...flower, petal: 8 },
        ovaryMm: 17,
        stalkMm: 6,
        ovaryRadiusMm: 1.9,
        openness: 0.5,
        fine: false,
        bowShare: 0.02,
      });
      const line = side.ovary;
      drawStemHairs(pen, {
        line,
        radius: side.radius,
        kind: "appressed",
        mm: 0.9,
        count: 70,
        glandCount: spec.where === "upper" ? 26 : 0,
        headMm: 0.75,
      });
      if (spec.where !== "absent") {
        const end = line[line.length - 1] ?? [0, 0];
        drawStemHairs(pen, {
          line: resample([end, step(end, -66, 2.2)], 12),
          radius: () => 2.6,
          kind: "appressed",
          mm: 0.9,
          count: 8,
          glandCount: 6,
          headMm: 0.75,
        });
      }
      return;
    }
    case "winter-organ": {
      const inner = newPen(`organ|${spec.organ}`, 0.6);
      const p = {
        stemMm: 400,
        nodes: 12,
        stemDia: 4,
        leaf: { len: 56, wid: 18, widest: 0.35, fullness: 1.4, foot: "rounded" as const, teeth: 10, toothMm: 0.4, stalk: 2 },
        hair: { stem: "appressed" as const, mm: 0.3, glands: "absent" as const },
        lines: 0 as const,
        flower: { ...flower, colour: "#cf7fb5" },
        capsule: 50,
        seed: { len: 1, neck: 0, ridged: false },
        tip: "erect" as const,
        base: spec.organ,
      };
      const long = spec.organ !== "rosettes" && spec.organ !== "stout_buds";
      const size = long ? 82 : spec.organ === "rosettes" ? 76 : 42;
      // Long organs stand off-centre, so that one of them is seen whole.
      const foot: PointMm = [long ? size * 0.16 : size / 2, size * 0.62];
      drawGround(inner, size * 0.04, size * 0.96, foot[1] - 1, size * 0.26, "winter");
      if (long) drawWinterOrgan(inner, foot, spec.organ, p, 1, 1);
      drawStem(inner, {
        line: cubic(
          [foot[0], foot[1] + 1],
          [foot[0], foot[1] - size * 0.2],
          [foot[0] + 2, foot[1] - size * 0.4],
          [foot[0] + size * 0.04, foot[1] - size * 0.6],
          20,
        ),
        radius: () => 2.1,
        tone: greenStem,
        lines: 0,
        detail: 0,
      });
      if (!long) drawWinterOrgan(inner, foot, spec.organ, p, 1, 1);
      shrinkInto(pen, inner, sketchMm / size);
      return;
    }
    case "leaf-joint":
      return leafJoint(pen, spec.joint);
    case "leaf-shape": {
      const len = 25;
      drawLeaf(pen, {
        ...leafBase,
        frame: frameAt([7, 25], -52),
        lenMm: len,
        widMm: len / spec.lengthToWidth,
        widest: spec.widest,
        fullness: spec.fullness,
        foot: spec.widest > 0.45 ? "wedge" : "rounded",
        teeth: 0,
        stalkMm: 1.6,
        bowShare: 0.05,
      });
      return;
    }
    case "leaf-foot":
      drawLeaf(pen, {
        ...leafBase,
        frame: frameAt([14, 24], -90),
        lenMm: 40,
        widMm: 19,
        widest: spec.foot === "wedge" ? 0.5 : 0.36,
        fullness: spec.foot === "wedge" ? 1.9 : 1.3,
        foot: spec.foot,
        stalkMm: 5,
      });
      if (spec.foot === "heart")
        for (const s of [-1, 1] as const) {
          const lobe = resample(cubic([14 + s * 0.6, 23.6], [14 + s * 1.4, 27.2], [14 + s * 5.6, 27], [14 + s * 7.4, 20.2]), 20);
          wash(pen, lobe, s === -1 ? upperSide.body : "#86a069");
          ink(pen, lobe, { width: s === -1 ? 0.85 : 1.25, taper: "none" });
        }
      return;
    case "leaf-edge":
      drawLeaf(pen, {
        ...leafBase,
        frame: frameAt([-16, 27], -14),
        lenMm: 62,
        widMm: 27,
        widest: 0.42,
        fullness: 1.5,
        teeth: spec.teeth,
        toothMm: spec.toothMm,
        detail: 2,
      });
      return;
    case "leaf-hairs":
      drawLeaf(pen, {
        ...leafBase,
        frame: frameAt([3, 22], -30),
        lenMm: 27,
        widMm: 13,
        detail: 2,
        ...(spec.density === "hairless" ? {} : { hair: { mm: spec.density === "dense" ? 1.9 : 1.1, dense: spec.density === "dense" } }),
      });
      return;
    case "bud-pose":
      return budPose(pen, spec.pose === "nodding");
    case "petal-colour":
      drawFlowerFace(pen, [10.5, 11], { ...flower, petal: 8.6, colour: spec.young }, { fine: true, aged: 0 });
      drawFlowerFace(pen, [21.5, 21.5], { ...flower, petal: 5, sepal: 3.4, colour: spec.old, old: spec.old }, { aged: 1, turn: 12 });
      return;
    case "petal-notch":
      drawPetal(pen, {
        frame: frameAt([14, 26.5], -90),
        lenMm: 24,
        notch: spec.notch,
        colour: "#cf7fb5",
        shadeSide: 1,
        fine: true,
        widthShare: 0.86,
      });
      return;
    case "stigma":
      ink(pen, bow([11, 29], [13, 15.5], 0.04), { width: 8.4, taper: "none", colour: "#6f6a4a" });
      ink(pen, bow([11, 29], [13, 15.5], 0.04), { width: 6.6, taper: "none", colour: "#f6f2dd" });
      drawStigma(pen, frameAt([13, 16], -78), spec.stigma, spec.stigma === "cross" ? 19 : 13, "side");
      return;
    case "capsule-hairs": {
      const { line, radius } = drawCapsule(pen, {
        frame: frameAt([-3, 25], -38),
        lenMm: 44,
        stalkMm: 5,
        radiusMm: 3,
        bowShare: 0.02,
        fine: true,
      });
      drawStemHairs(pen, {
        line,
        radius,
        kind: spec.hairs === "hairless" ? "hairless" : "appressed",
        mm: 1.4,
        count: 120,
        glandCount: spec.hairs === "glandular" ? 34 : 0,
        headMm: 0.8,
      });
      return;
    }
    case "seed-neck":
      drawSeed(pen, { frame: frameAt([4.5, 23.5], -42), lenMm: 19, neckMm: spec.neck ? 2.2 : 0, ridged: false, plume: true });
      return;
    case "seed-face":
      drawSeed(pen, { frame: frameAt([4, 20], -28), lenMm: 24, neckMm: 0, ridged: spec.ridged, plume: false });
      return;
    case "setting": {
      const inner = newPen(`setting|${spec.setting}`, 0.5);
      drawLandscape(inner, 84, 84, spec.setting, false);
      shrinkInto(pen, inner, sketchMm / 84);
      return;
    }
  }
}

/** Takes over what another pen drew, `factor` times its size. */
function shrinkInto(pen: Pen, inner: Pen, factor: number): void {
  for (const s of inner.shapes) {
    if (s.kind === "path")
      pen.shapes.push({
        ...s,
        d: s.d.replace(/-?\d+(\.\d+)?/g, (n) => String(Math.round(Number(n) * factor * 1000) / 1000)),
        ...(s.strokeMm === undefined ? {} : { strokeMm: s.strokeMm * factor }),
      });
    else if (s.kind === "circle")
      pen.shapes.push({
        ...s,
        at: [s.at[0] * factor, s.at[1] * factor],
        radiusMm: s.radiusMm * factor,
        ...(s.strokeMm === undefined ? {} : { strokeMm: s.strokeMm * factor }),
      });
  }
}

function growth(pen: Pen, pose: "erect" | "ascending" | "creeping"): void {
  drawGround(pen, 1, 27, 23.5, 5, "green");
  const line = resample(
    pose === "erect"
      ? cubic([13, 24], [13.6, 17], [13, 9], [14.4, 2.5])
      : pose === "ascending"
        ? cubic([3, 24], [11, 24.5], [19, 22], [20.5, 3.5])
        : cubic([2.5, 23.6], [10, 22.6], [18, 25], [26, 21.6]),
    60,
  );
  for (let i = 1; i < 9; i += 1) {
    const k = Math.round((i / 9) * 60);
    const a = line[k] ?? [0, 0];
    const b = line[Math.min(60, k + 1)] ?? a;
    const d = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
    for (const s of [1, -1] as const)
      drawLeaf(pen, {
        ...leafBase,
        frame: frameAt(a, d + s * 50),
        lenMm: 6.4 - i * 0.38,
        widMm: 2.3 - i * 0.12,
        teeth: 0,
        bowShare: s * 0.12,
        right: s === 1 ? 0.7 : 1,
        left: s === 1 ? 1 : 0.7,
        tone: i > 6 ? youngLeaf : upperSide,
        detail: 0,
      });
  }
  drawStem(pen, { line, radius: (t) => 0.62 - 0.4 * t, tone: greenStem, lines: 0, detail: 0 });
}

function leafJoint(pen: Pen, joint: "clasping" | "sessile" | "running_down" | "short_stalk" | "long_stalk"): void {
  const stalk = joint === "short_stalk" ? 2.2 : joint === "long_stalk" ? 6.5 : 0;
  const seatY = 17;
  const line = bow([13.6, 29], [14.4, -1], 0.01, 40);
  const leaf = (s: 1 | -1): void => {
    const degrees = s === 1 ? -34 : 214;
    const seat: PointMm = [14 + s * (joint === "clasping" ? -0.4 : 1.7), seatY];
    drawLeaf(pen, {
      ...leafBase,
      frame: frameAt(step(seat, degrees, stalk), degrees),
      lenMm: 27,
      widMm: joint === "clasping" ? 9.5 : 8.4,
      foot: joint === "long_stalk" ? "wedge" : joint === "clasping" ? "clasp" : "rounded",
      widest: 0.36,
      stalkMm: stalk,
      bowShare: s * 0.1,
      left: s === 1 ? 1 : 0.8,
      right: s === 1 ? 0.8 : 1,
    });
  };
  if (joint !== "clasping") for (const s of [1, -1] as const) leaf(s);
  drawStem(pen, { line, radius: () => 2, tone: greenStem, lines: joint === "running_down" ? 4 : 0, detail: 1, flush: 0.3 });
  if (joint === "clasping") for (const s of [1, -1] as const) leaf(s);
  ink(pen, bow([12, seatY + 0.8], [16, seatY + 0.8], -0.14), { width: 0.9 });
  if (joint === "running_down")
    for (const s of [1, -1] as const) {
      const wing = cubic([14 + s * 3.2, seatY - 1], [14 + s * 2.9, seatY + 3], [14 + s * 2.5, seatY + 7], [14 + s * 2.1, 29], 16);
      wash(pen, [...wing, [14 + s * 1.9, 29], [14 + s * 1.9, seatY - 1]], upperSide.body);
      ink(pen, wing, { width: 1.3, taper: "end" });
    }
}

function budPose(pen: Pen, nodding: boolean): void {
  const line = resample(
    nodding
      ? [...cubic([9, 29], [8, 20], [8, 11], [11, 6.5], 16), ...cubic([11, 6.5], [13.5, 3], [18, 3.4], [18.6, 9], 14).slice(1)]
      : cubic([14, 29], [13, 21], [14.4, 16], [14, 10.5], 20),
    60,
  );
  const end = line[60] ?? [0, 0];
  const d = nodding ? 84 : -91;
  const at = line[26] ?? [0, 0];
  for (const s of [1, -1] as const)
    drawLeaf(pen, {
      ...leafBase,
      frame: frameAt(at, -90 + s * 58),
      lenMm: 9,
      widMm: 3.4,
      teeth: 8,
      toothMm: 0.25,
      bowShare: s * 0.14,
      left: s === 1 ? 1 : 0.7,
      right: s === 1 ? 0.7 : 1,
    });
  drawStem(pen, { line, radius: (t) => 0.9 - 0.4 * t, tone: greenStem, lines: 0, detail: 0, flush: 0.4 });
  for (const s of [1, -1] as const)
    drawLeaf(pen, {
      ...leafBase,
      frame: frameAt(end, d + s * 52),
      lenMm: 6.5,
      widMm: 2.3,
      teeth: 0,
      bowShare: s * 0.12,
      tone: youngLeaf,
      detail: 0,
    });
  [-32, 30, -14, 14, 0].forEach((a, i) => drawBud(pen, frameAt(end, d + a), flower, 5 - i * 0.3, 2.6 + (i % 3) * 0.7, i === 1 || i === 3));
}
