/** What a willowherb-like plant looks like, in numbers: the parameters every figure is drawn from. */
import { z } from "zod";

const colour = z.string().regex(/^#[0-9a-f]{6}$/, "use a colour of the form #rrggbb");
const positive = z.number().positive();
const notNegative = z.number().nonnegative();

const leafFoot = z.enum(["clasp", "rounded", "wedge", "down", "heart"]);
const stemHair = z.enum(["spreading", "appressed", "hairless"]);
const glandPlace = z.enum(["absent", "calyx_only", "upper"]);
const stigmaKind = z.enum(["cross", "club"]);
const winterOrgan = z.enum(["rosettes", "leafy_runners", "thread_runners", "thick_shoots", "stout_buds", "scaly_runners"]);

/** Lengths in millimetres; `widest` and `notch` are shares of the length of leaf and petal. */
export const figureParameters = z.object({
  stemMm: positive,
  nodes: z.number().int().min(4).max(40),
  stemDia: positive,
  leaf: z.object({
    len: positive,
    wid: positive,
    widest: z.number().min(0.1).max(0.9),
    fullness: z.number().min(0.5).max(3),
    foot: leafFoot,
    teeth: z.number().int().min(0).max(80),
    toothMm: notNegative,
    stalk: notNegative,
  }),
  hair: z.object({ stem: stemHair, mm: notNegative, glands: glandPlace }),
  lines: z.union([z.literal(0), z.literal(2), z.literal(4)]),
  flower: z.object({ petal: positive, notch: z.number().min(0).max(0.6), colour, old: colour, stigma: stigmaKind, sepal: positive }),
  capsule: positive,
  seed: z.object({ len: positive, neck: notNegative, ridged: z.boolean() }),
  tip: z.enum(["erect", "nodding"]),
  base: winterOrgan,
});

export type FigureParameters = z.infer<typeof figureParameters>;
export type LeafFoot = z.infer<typeof leafFoot>;
export type WinterOrgan = z.infer<typeof winterOrgan>;

/**
 * A plant halfway between two others: lengths and counts are means; where the parents differ in kind, the child takes the
 * stronger mark (glands, lines, ridges), as first-generation crosses in this genus commonly do (common practice, no source).
 */
export function crossOf(a: FigureParameters, b: FigureParameters): FigureParameters {
  const mean = (x: number, y: number): number => (x + y) / 2;
  const glandRank = { absent: 0, calyx_only: 1, upper: 2 };
  return {
    stemMm: mean(a.stemMm, b.stemMm),
    nodes: Math.round(mean(a.nodes, b.nodes)),
    stemDia: mean(a.stemDia, b.stemDia),
    leaf: {
      len: mean(a.leaf.len, b.leaf.len),
      wid: mean(a.leaf.wid, b.leaf.wid),
      widest: mean(a.leaf.widest, b.leaf.widest),
      fullness: mean(a.leaf.fullness, b.leaf.fullness),
      foot: a.leaf.foot,
      teeth: Math.round(mean(a.leaf.teeth, b.leaf.teeth)),
      toothMm: mean(a.leaf.toothMm, b.leaf.toothMm),
      stalk: mean(a.leaf.stalk, b.leaf.stalk),
    },
    hair: {
      ...a.hair,
      mm: mean(a.hair.mm, b.hair.mm),
      glands: glandRank[a.hair.glands] >= glandRank[b.hair.glands] ? a.hair.glands : b.hair.glands,
    },
    lines: a.lines >= b.lines ? a.lines : b.lines,
    flower: {
      ...a.flower,
      petal: mean(a.flower.petal, b.flower.petal),
      notch: mean(a.flower.notch, b.flower.notch),
      sepal: mean(a.flower.sepal, b.flower.sepal),
    },
    capsule: mean(a.capsule, b.capsule),
    seed: { len: mean(a.seed.len, b.seed.len), neck: mean(a.seed.neck, b.seed.neck), ridged: a.seed.ridged || b.seed.ridged },
    tip: a.tip,
    base: a.base,
  };
}
