/**
 * Letters as single strokes of a pen, our own design on a grid 4 wide and 6 high (descenders to 8), so that a label looks
 * the same on every machine, whatever typefaces it has.
 */
import { smooth } from "./curve.js";
import type { PointMm } from "./drawing.js";
import { inkColour, pathData } from "./pen.js";
import type { Pen } from "./pen.js";

/** Strokes of one letter: points "xy" in half grid units (base 36); `~` begins a smooth stroke, `;` lifts the pen. First number = advance. */
const letters: Readonly<Record<string, readonly [advance: number, strokes: string]>> = {
  a: [5, "~84 54 36 38 5c 7b 88 84 89 9c"],
  b: [5, "20 2c ~2a 4c 7c 89 76 45 27"],
  c: [4.6, "~85 64 36 29 4c 6c 8b"],
  d: [5, "80 8c ~86 54 36 29 4c 6c 8a"],
  e: [4.8, "~28 88 76 54 36 29 4c 6c 8b"],
  f: [3.6, "~71 50 42 4c ; 25 65"],
  g: [5, "~85 54 36 38 5b 7a 86 85 8c 7f 4g 2f"],
  h: [5, "20 2c ~28 54 75 87 8c"],
  i: [2.4, "24 2c ; 21 22"],
  j: [2.6, "~34 3d 1g ; 31 32"],
  k: [4.6, "20 2c ; 74 28 ; 48 8c"],
  l: [2.6, "~20 2a 3c 4b"],
  m: [6.9, "24 2c ~27 44 65 67 6c ~67 84 a5 b7 bc"],
  n: [5, "24 2c ~27 54 75 87 8c"],
  o: [5, "~54 36 29 4c 6c 89 86 64 54"],
  p: [5, "24 2g ~2a 4c 7c 89 76 45 27"],
  q: [5, "84 8g ~86 54 36 29 4c 6c 8a"],
  r: [3.6, "24 2c ~27 44 64"],
  s: [4.2, "~75 54 35 36 58 7a 6c 4c 2b"],
  t: [3.6, "~41 4a 5c 7b ; 25 65"],
  u: [5, "~24 29 4c 6c 89 ; 84 8c"],
  v: [4.6, "24 5c 84"],
  w: [5.9, "24 4c 66 8c a4"],
  x: [4.6, "24 8c ; 84 2c"],
  y: [4.8, "24 5c ~84 5c 3g 1g"],
  z: [4.6, "24 84 2c 8c"],
  A: [5.4, "2c 50 8c ; 38 78"],
  B: [5.2, "20 2c ~20 60 72 55 25 ~25 76 89 6c 2c"],
  C: [5.4, "~82 60 32 26 3b 6c 8a"],
  D: [5.4, "20 2c ~20 70 94 98 7c 2c"],
  E: [4.8, "80 20 2c 8c ; 26 66"],
  H: [5.6, "20 2c ; 80 8c ; 26 86"],
  I: [2.6, "20 2c"],
  L: [4.6, "20 2c 8c"],
  M: [6.6, "2c 20 68 a0 ac"],
  N: [5.6, "2c 20 8c 80"],
  P: [5, "20 2c ~20 60 82 85 67 27"],
  R: [5.2, "20 2c ~20 60 82 85 67 27 ; 57 8c"],
  S: [5, "~81 60 31 33 56 89 7c 4c 2a"],
  T: [5, "10 90 ; 50 5c"],
  V: [5.2, "20 5c 80"],
  X: [5, "20 8c ; 80 2c"],
  "0": [5, "~50 32 29 4c 6c 89 83 60 50"],
  "1": [4, "33 50 5c"],
  "2": [5, "~22 40 70 83 66 2c 2c 8c"],
  "3": [5, "~21 50 82 65 45 ~45 86 89 6c 3c 2a"],
  "4": [5, "7c 70 29 99"],
  "5": [5, "80 30 25 ~25 65 88 7b 4c 2b"],
  "6": [5, "~81 50 35 29 4c 7c 89 67 38 29"],
  "7": [5, "20 80 4c"],
  "8": [5, "~55 33 40 60 73 55 29 3c 6c 89 55"],
  "9": [5, "~86 55 33 40 70 83 87 7c 5c"],
  ".": [2.2, "2b 2c"],
  ",": [2.2, "3b 2e"],
  "-": [4.2, "37 77"],
  ":": [2.2, "25 26 ; 2b 2c"],
  "/": [4, "7- 2c"],
  "%": [6, "90 2c ; 31 32 ; 8b 8c"],
  " ": [3, ""],
};

/** Width of a line of letters, millimetres, at the given height of capitals. */
function letteringWidth(text: string, capMm: number): number {
  return Array.from(text).reduce((sum, c) => sum + ((letters[c] ?? letters["-"])?.[0] ?? 4), 0) * (capMm / 6);
}

/** Writes a line with its baseline starting at `at`, turned by `degrees`. */
export function drawLettering(
  pen: Pen,
  at: PointMm,
  text: string,
  options: {
    readonly capMm: number;
    readonly weight?: number;
    readonly degrees?: number;
    readonly colour?: string;
    readonly anchor?: "start" | "middle" | "end";
  },
): void {
  const unit = options.capMm / 6;
  const r = ((options.degrees ?? 0) * Math.PI) / 180;
  const width = letteringWidth(text, options.capMm);
  let x = options.anchor === "middle" ? -width / 2 : options.anchor === "end" ? -width : 0;
  for (const c of text) {
    const [advance, strokes] = letters[c] ?? letters["-"] ?? [4, ""];
    for (const line of strokesOf(strokes)) {
      const placed = line.map(([u, v]): PointMm => {
        const dx = x + u * unit;
        const dy = (v - 6) * unit;
        return [at[0] + dx * Math.cos(r) - dy * Math.sin(r), at[1] + dx * Math.sin(r) + dy * Math.cos(r)];
      });
      pen.shapes.push({
        kind: "path",
        d: pathData(pen, placed, false),
        stroke: options.colour ?? inkColour,
        strokeMm: (options.weight ?? 0.13) * options.capMm,
      });
    }
    x += advance * unit;
  }
}

/** Reads the strokes of a letter: a smooth stroke takes all its points, a straight one is a chain, a pair of points a dash. */
function strokesOf(code: string): PointMm[][] {
  const out: PointMm[][] = [];
  let points: PointMm[] = [];
  let curved = false;
  const flush = (): void => {
    if (points.length > 1) out.push(curved ? smooth(points, 5) : points);
    points = [];
    curved = false;
  };
  for (const token of code.split(" ").filter((t) => t !== "")) {
    if (token === ";") {
      flush();
      continue;
    }
    if (token.startsWith("~")) {
      flush();
      curved = true;
    }
    const pair = token.replace("~", "");
    points.push([Number.parseInt(pair[0] ?? "0", 36) / 2, pair[1] === "-" ? -0.5 : Number.parseInt(pair[1] ?? "0", 36) / 2]);
  }
  flush();
  return out;
}
