/** Every figure of a followed plant, one for each kind of view a photographer takes, drawn from the plant's parameters. */
import { bow, frameAt, resample } from "./curve.js";
import type { Figure, PointMm } from "./drawing.js";
import type { FigureParameters } from "./figure-parameters.js";
import { drawFlowerSide } from "./flower-side.js";
import { drawFlowerFace } from "./flower.js";
import { drawCapsule, drawOpenCapsule, drawSeed } from "./fruit.js";
import { drawHabit, habitExtent } from "./habit.js";
import type { StageId } from "./habit.js";
import { drawLandscape } from "./landscape.js";
import type { Setting } from "./landscape.js";
import { drawLeaf, upperSide } from "./leaf.js";
import { newPen, vary } from "./pen.js";
import type { Pen } from "./pen.js";
import { drawStemCut, drawStemHairs, greenStem } from "./stem.js";
import { stemPiece, footOfStem, leafPairAtStem, twoLeaves, stemTip, stigmaClose, calyxFoot } from "./figure-scenes.js";
import type { Sheet } from "./figure-scenes.js";
import { drawPaperLabel } from "./paper-label.js";

/** The kinds of figure. */
export const figureViews = [
  "place",
  "habit",
  "base",
  "stem_mid",
  "stem_cut",
  "node",
  "leaf_top",
  "leaf_under",
  "leaf_edge",
  "tip",
  "flower_face",
  "flower_side",
  "stigma",
  "calyx_foot",
  "capsule_green",
  "capsule_open",
  "seed",
  "winter",
  "label",
] as const;
export type FigureView = (typeof figureViews)[number];

export interface FigureRequest {
  readonly view: FigureView;
  readonly parameters: FigureParameters;
  readonly stage: StageId;
  /** The same seed gives the same individual. */
  readonly seed: string;
  /** For the view of the place. */
  readonly setting?: Setting;
  /** For the paper label: one short line each. */
  readonly lines?: readonly string[];
  /** Share of seeds that are filled, 0-1; empty seeds are drawn shrunken and pale. */
  readonly filled?: number;
}

/**
 * Draws one figure. Sizes are true: an organ measures its parameter times its own seeded variation, and `truths` says how
 * much that came to. Same request, same bytes.
 */
export function drawFigure(request: FigureRequest): Figure {
  const { view, parameters: p, stage, seed } = request;
  const start = (magnification: number): Pen => newPen(`${view}|${stage}|${seed}`, magnification);
  const done = (pen: Pen, sheet: Sheet): Figure => ({
    drawing: { ...sheet, magnification: pen.magnification, shapes: pen.shapes },
    truths: pen.truths,
    title: view.replace("_", " "),
    description: pen.truths.map((t) => `${t.what} ${t.lengthMm.toPrecision(3)} mm`).join("; ") || `${view.replace("_", " ")}, ${stage}`,
  });
  switch (view) {
    case "place": {
      const pen = start(1);
      const sheet = { widthMm: 160, heightMm: 120 };
      drawLandscape(pen, sheet.widthMm, sheet.heightMm, request.setting ?? "open", stage === "S0" || stage === "S8");
      return done(pen, sheet);
    }
    case "habit": {
      const e = habitExtent(p, stage);
      const pen = start(Math.min(2, 300 / e.heightMm));
      drawHabit(pen, p, stage, e.foot);
      return done(pen, e);
    }
    case "base":
    case "winter": {
      const pen = start(1.6);
      return done(pen, footOfStem(pen, p, stage, view));
    }
    case "stem_mid": {
      const sheet = { widthMm: p.stemDia * 8.5, heightMm: p.stemDia * 3.4 };
      const pen = start(120 / sheet.widthMm);
      const line = resample(bow([sheet.widthMm * 0.03, sheet.heightMm * 0.54], [sheet.widthMm * 0.97, sheet.heightMm * 0.5], 0.012), 60);
      stemPiece(pen, p, line, p.stemDia, "stem", 2, stage);
      return done(pen, sheet);
    }
    case "stem_cut": {
      const radius = vary(pen0(start, p), p.stemDia, 0.05) / 2;
      const sheet = { widthMm: radius * 3.4, heightMm: radius * 3 };
      const pen = start(80 / sheet.widthMm);
      drawStemCut(pen, [radius * 1.65, radius * 1.5], radius, p.lines, greenStem);
      return done(pen, sheet);
    }
    case "node": {
      const sheet = { widthMm: 12 + p.leaf.len * 0.62, heightMm: 10 + p.leaf.len * 0.46 };
      const pen = start(110 / sheet.widthMm);
      leafPairAtStem(pen, p, sheet, stage);
      return done(pen, sheet);
    }
    case "leaf_top":
    case "leaf_under":
      return done(...twoLeaves(start, p, stage, view === "leaf_under"));
    case "leaf_edge": {
      const sheet = { widthMm: Math.max(10, p.leaf.len * 0.3), heightMm: Math.max(7, p.leaf.len * 0.2) };
      const pen = start(110 / sheet.widthMm);
      // The leaf is drawn whole; the sheet shows the upper edge about the middle.
      drawLeaf(pen, {
        frame: frameAt([sheet.widthMm * 0.5 - p.leaf.len * 0.52, sheet.heightMm * 0.32 + p.leaf.wid * 0.46], 2),
        lenMm: p.leaf.len,
        widMm: p.leaf.wid,
        widest: p.leaf.widest,
        fullness: p.leaf.fullness,
        foot: p.leaf.foot,
        teeth: p.leaf.teeth,
        toothMm: p.leaf.toothMm,
        stalkMm: p.leaf.stalk,
        bowShare: 0.02,
        tone: upperSide,
        detail: 2,
        hair: { mm: Math.max(0.12, p.hair.mm), dense: p.hair.stem === "spreading" },
      });
      return done(pen, sheet);
    }
    case "tip": {
      const sheet = { widthMm: Math.max(34, p.leaf.len * 0.95), heightMm: Math.max(42, p.leaf.len * 1.05) };
      const pen = start(110 / sheet.heightMm);
      stemTip(pen, p, sheet, stage);
      return done(pen, sheet);
    }
    case "flower_face": {
      const side = Math.max(p.flower.petal * 2.5, (p.flower.sepal + p.flower.petal * 0.15) * 2.2);
      const pen = start(90 / side);
      drawFlowerFace(pen, [side / 2, side / 2], p.flower, {
        turn: pen.random.bell() * 6,
        fine: true,
        id: "flower",
        aged: stage === "S5" ? 0.5 : 0.2,
      });
      return done(pen, { widthMm: side, heightMm: side });
    }
    case "flower_side": {
      const ovary = vary(start(1), p.capsule * 0.42, 0.05);
      const total = ovary * 1.2 + p.flower.petal * 1.5 + p.flower.sepal * 0.3;
      const sheet = { widthMm: total + 3, heightMm: p.flower.petal * 2.3 + 3 };
      const pen = start(120 / sheet.widthMm);
      const r = p.stemDia * 0.2;
      const flower = drawFlowerSide(pen, {
        frame: frameAt([1.5, sheet.heightMm * 0.56], -1),
        flower: p.flower,
        ovaryMm: ovary,
        stalkMm: ovary * 0.18,
        ovaryRadiusMm: r,
        openness: 0.8,
        fine: true,
        id: "flower",
        bowShare: 0.03,
      });
      drawStemHairs(pen, {
        line: flower.ovary,
        radius: flower.radius,
        kind: "appressed",
        mm: 0.3,
        count: 260,
        glandCount: p.hair.glands === "upper" ? 26 : 0,
        headMm: 0.12,
      });
      return done(pen, sheet);
    }
    case "stigma": {
      const unit = p.flower.petal;
      const sheet = { widthMm: unit * 1.5, heightMm: unit * 1.15 };
      const pen = start(90 / sheet.widthMm);
      stigmaClose(pen, p, sheet);
      return done(pen, sheet);
    }
    case "calyx_foot": {
      const sheet = { widthMm: 9 + p.flower.sepal * 0.9, heightMm: 6.5 + p.flower.sepal * 0.6 };
      const pen = start(110 / sheet.widthMm);
      calyxFoot(pen, p, sheet);
      return done(pen, sheet);
    }
    case "capsule_green": {
      const count = 3;
      const sheet = { widthMm: p.capsule * 1.36 + 4, heightMm: 10 * count + 6 };
      const pen = start(130 / sheet.widthMm);
      const share = stage === "S5" ? 0.86 : 1;
      const r = Math.max(0.7, p.stemDia * 0.2);
      for (let i = 0; i < count; i += 1) {
        const len = vary(pen, p.capsule * share, 0.055);
        const frame = frameAt([2 + pen.random.between(0, 2), 8 + 10 * i], pen.random.bell() * 1.6);
        const { line, radius } = drawCapsule(pen, {
          frame,
          lenMm: len,
          stalkMm: p.capsule * 0.14,
          radiusMm: r,
          bowShare: pen.random.between(0.008, 0.03) * (i % 2 === 0 ? 1 : -1),
          fine: true,
          measuredAs: `capsule-${i + 1}`,
        });
        drawStemHairs(pen, {
          line,
          radius,
          kind: "appressed",
          mm: 0.3,
          count: 240,
          glandCount: p.hair.glands === "upper" ? 34 : 0,
          headMm: 0.14,
        });
      }
      return done(pen, sheet);
    }
    case "capsule_open": {
      const sheet = { widthMm: p.capsule * 1.3 + 8, heightMm: p.capsule * 0.72 + 8 };
      const pen = start(120 / sheet.widthMm);
      drawOpenCapsule(pen, {
        frame: frameAt([3, sheet.heightMm * 0.5], pen.random.bell() * 2),
        lenMm: vary(pen, p.capsule, 0.05),
        stalkMm: p.capsule * 0.14,
        radiusMm: Math.max(0.7, p.stemDia * 0.2),
        bowShare: 0.01,
        fine: true,
        splitShare: 0.72,
        seeds: 26,
        seedMm: p.seed.len,
        measuredAs: "capsule",
      });
      return done(pen, sheet);
    }
    case "seed": {
      const L = p.seed.len;
      const sheet = { widthMm: L * 7.2, heightMm: L * 4.6 };
      const pen = start(110 / sheet.widthMm);
      const filled = request.filled ?? 1;
      for (let i = 0; i < 6; i += 1) {
        const at: PointMm = [
          L * (0.9 + (i % 3) * 2.1 + pen.random.between(-0.15, 0.15)),
          L * (1.2 + Math.floor(i / 3) * 2.1 + pen.random.between(-0.15, 0.15)),
        ];
        drawSeed(pen, {
          frame: frameAt(at, pen.random.bell() * 13),
          lenMm: vary(pen, L, 0.055),
          neckMm: p.seed.neck,
          ridged: p.seed.ridged,
          plume: i % 2 === 0,
          empty: (i * 7 + 3) % 6 >= Math.round(filled * 6),
          measuredAs: `seed-${i + 1}`,
        });
      }
      return done(pen, sheet);
    }
    case "label": {
      const pen = start(1.4);
      const sheet = { widthMm: 62, heightMm: 36 };
      drawPaperLabel(pen, [1, 1], 60, 34, request.lines ?? []);
      return done(pen, sheet);
    }
  }
}

/** A pen only for a size that must be known before the sheet is. */
function pen0(start: (magnification: number) => Pen, p: FigureParameters): Pen {
  return start(Math.max(1, 10 / p.stemDia));
}
