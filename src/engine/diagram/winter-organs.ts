/** What stays over winter at the foot of the stem: rosettes, runners, shoots, buds. */
import { along, band, bow, cubic, ellipse, frameAt, resample, smooth } from "./curve.js";
import type { PointMm } from "./drawing.js";
import type { FigureParameters, WinterOrgan } from "./figure-parameters.js";
import { drawLeaf, reddened, upperSide, youngLeaf } from "./leaf.js";
import type { LeafTone } from "./leaf.js";
import { hairs, ink, mix, rimmedWash, step, wash } from "./pen.js";
import type { Hair, Pen } from "./pen.js";

/** Share of full size a winter organ has reached: S6 0.35, S7 0.9, S8 and S0 whole, earlier none. */
export function winterGrowth(stage: string): number {
  return stage === "S6" ? 0.35 : stage === "S7" ? 0.9 : stage === "S8" || stage === "S0" ? 1 : 0;
}

/** Draws the organs of one stem foot standing at `foot`, grown to `growth`; the ground runs level through `foot`. */
export function drawWinterOrgan(
  pen: Pen,
  foot: PointMm,
  organ: WinterOrgan,
  p: FigureParameters,
  growth: number,
  detail: 0 | 1 | 2 = 1,
): void {
  if (growth <= 0) return;
  switch (organ) {
    case "rosettes": {
      const far = rosetteSeat(pen, foot, -1, growth, p);
      const near = rosetteSeat(pen, foot, 1, growth, p);
      drawRosette(pen, far, p, growth * 0.8, detail);
      drawRosette(pen, near, p, growth, detail);
      return;
    }
    case "leafy_runners":
      drawRunner(pen, foot, -1, p, growth, detail);
      drawRunner(pen, foot, 1, p, growth * 0.86, detail);
      return;
    case "thread_runners":
      drawThread(pen, foot, -1, growth, p);
      drawThread(pen, foot, 1, growth * 0.8, p);
      return;
    case "thick_shoots":
      drawFleshyShoot(pen, foot, 1, growth, 3.2, 58);
      drawFleshyShoot(pen, foot, -1, growth * 0.8, 2.7, 48);
      return;
    case "scaly_runners":
      drawFleshyShoot(pen, foot, 1, growth, 0.8, 50);
      drawFleshyShoot(pen, foot, -1, growth * 0.75, 0.7, 42);
      return;
    case "stout_buds":
      for (const [dx, dy, turn, size] of [
        [-3.4, 1.5, -118, 0.9],
        [3, 1.2, -58, 1],
        [0.6, 3, -82, 0.75],
      ] as const)
        drawStoutBud(pen, [foot[0] + dx, foot[1] + dy], turn, 11 * size * growth);
      return;
  }
}

function rosetteSeat(pen: Pen, foot: PointMm, side: 1 | -1, growth: number, p: FigureParameters): PointMm {
  const reach = (7 + p.stemDia) * growth * pen.random.between(0.9, 1.15);
  const seat: PointMm = [foot[0] + side * reach, foot[1] + (side === 1 ? 2.2 : -0.6)];
  const line = cubic(
    [foot[0], foot[1] + 0.8],
    [foot[0] + side * reach * 0.4, foot[1] + 3],
    [foot[0] + side * reach * 0.8, foot[1] + 3],
    seat,
    12,
  );
  const tube = band(line, () => 0.7);
  rimmedWash(pen, tube, "#c9a78c");
  ink(pen, tube.slice(0, 13), { width: 0.8, taper: "none" });
  ink(pen, tube.slice(13), { width: 1, taper: "none" });
  return seat;
}

/** A rosette seen from half above: leaves fanned round, far ones short and first, near ones long and last. */
function drawRosette(pen: Pen, seat: PointMm, p: FigureParameters, growth: number, detail: 0 | 1 | 2): void {
  const leaves = Array.from({ length: 11 }, (_, i) => ({ turn: -90 + i * 137.5, size: i < 5 ? 1 : i < 8 ? 0.7 : 0.42 }));
  const seen = leaves.map((l) => ({ ...l, y: Math.sin((l.turn * Math.PI) / 180), x: Math.cos((l.turn * Math.PI) / 180) }));
  seen.sort((a, b) => (a.size > 0.6 ? 0 : 1) - (b.size > 0.6 ? 0 : 1) || a.y - b.y);
  for (const l of seen) {
    const flat = { x: l.x, y: l.y * 0.58 };
    const view = Math.hypot(flat.x, flat.y);
    const deg = (Math.atan2(flat.y, flat.x) * 180) / Math.PI + pen.random.bell() * 5;
    const len = Math.min(26, p.leaf.len * 0.42) * l.size * growth * pen.random.between(0.88, 1.1);
    const tone: LeafTone = l.size < 0.5 ? youngLeaf : l.y < -0.4 ? upperSide : pen.random.between(0, 1) < 0.3 ? reddened : upperSide;
    drawLeaf(pen, {
      frame: frameAt(step(seat, deg, 1.2 * growth), deg, view + (1 - view) * 0.25, 1),
      lenMm: len,
      widMm: len * 0.46,
      widest: 0.56,
      fullness: 1.3,
      foot: "wedge",
      teeth: Math.min(10, p.leaf.teeth),
      toothMm: p.leaf.toothMm * 0.5,
      stalkMm: len * 0.22,
      bowShare: (l.x > 0 ? 1 : -1) * 0.1,
      left: l.x > 0 ? 0.85 : 1,
      right: l.x > 0 ? 1 : 0.85,
      tone,
      detail: detail === 0 ? 0 : 1,
    });
  }
}

/** A long leafy runner above ground: an arched line with distant pairs of small green leaves. */
function drawRunner(pen: Pen, foot: PointMm, side: 1 | -1, p: FigureParameters, growth: number, detail: 0 | 1 | 2): void {
  const L = 62 * growth;
  const line = resample(
    cubic(
      [foot[0], foot[1]],
      [foot[0] + side * L * 0.2, foot[1] - 7 * growth],
      [foot[0] + side * L * 0.55, foot[1] + 5],
      [foot[0] + side * L, foot[1] - 3 + pen.random.between(-2, 2)],
      40,
    ),
    60,
  );
  const radius = (t: number): number => 0.75 - 0.25 * t;
  const pairs = 5;
  const leafAt = (t: number, up: 1 | -1, size: number): void => {
    const { at, degrees } = along(line, t);
    const turn = degrees + (up === 1 ? -side * pen.random.between(48, 66) : side * pen.random.between(26, 42));
    drawLeaf(pen, {
      frame: frameAt(at, turn),
      lenMm: size,
      widMm: size * 0.52,
      widest: 0.42,
      fullness: 1.35,
      foot: "rounded",
      teeth: 5,
      toothMm: 0.25,
      stalkMm: size * 0.1,
      bowShare: -side * up * 0.08,
      left: up === 1 ? 1 : 0.7,
      right: up === 1 ? 0.75 : 1,
      tone: up === 1 ? upperSide : youngLeaf,
      detail: detail === 0 ? 0 : 1,
    });
  };
  for (let i = 0; i < pairs; i += 1) leafAt(0.2 + (0.74 * i) / (pairs - 1), 1, 12.5 * growth * (1 - 0.1 * i));
  const tube = band(line, radius);
  rimmedWash(pen, tube, mix("#a9b67c", "#a5584c", 0.28));
  wash(
    pen,
    band(line, () => -0.1, radius),
    "#6d5240",
    0.3,
  );
  ink(pen, tube.slice(0, 61), { width: 0.8, taper: "none" });
  ink(pen, tube.slice(61), { width: 1.2, taper: "none" });
  for (let i = 0; i < pairs; i += 1) {
    const t = 0.2 + (0.74 * i) / (pairs - 1);
    leafAt(t, -1, 12 * growth * (1 - 0.1 * i));
    if (i > 0 && i < pairs - 1) roots(pen, along(line, t).at, 4);
  }
  const end = along(line, 1);
  for (const a of [-24, 4, 26])
    drawLeaf(pen, {
      frame: frameAt(end.at, end.degrees + a),
      lenMm: 6 * growth,
      widMm: 2.8 * growth,
      widest: 0.4,
      fullness: 1.3,
      foot: "rounded",
      teeth: 0,
      toothMm: 0,
      stalkMm: 0,
      tone: youngLeaf,
      detail: 0,
      left: 0.9,
      right: 0.7,
    });
}

/** A thread-thin runner with distant scales, ending in a firm round bud. */
function drawThread(pen: Pen, foot: PointMm, side: 1 | -1, growth: number, p: FigureParameters): void {
  const L = 66 * growth;
  const line = resample(
    cubic(
      foot,
      [foot[0] + side * L * 0.25, foot[1] + 9],
      [foot[0] + side * L * 0.6, foot[1] - 1],
      [foot[0] + side * L, foot[1] + 5 + pen.random.between(-1.5, 1.5)],
      40,
    ),
    60,
  );
  const tube = band(line, () => 0.24 + p.stemDia * 0.03);
  rimmedWash(pen, tube, "#d8b59c");
  ink(pen, tube.slice(0, 61), { width: 0.7, taper: "none" });
  ink(pen, tube.slice(61), { width: 1, taper: "none" });
  for (const t of [0.25, 0.45, 0.65, 0.82]) {
    const { at, degrees } = along(line, t);
    for (const s of [1, -1]) {
      const scale = smooth([at, step(at, degrees + s * 40, 1.2), step(at, degrees + s * 16, 2.4)], 5);
      ink(pen, scale, { width: 1.2, taper: "end" });
    }
    roots(pen, at, 3);
  }
  const end = along(line, 1);
  drawStoutBud(pen, end.at, end.degrees - side * 8, 5.4 * Math.max(0.5, growth), true);
}

/** A firm bud of overlapping scales along a direction. */
function drawStoutBud(pen: Pen, at: PointMm, degrees: number, lenMm: number, pale = false): void {
  const f = (x: number, y: number): PointMm => {
    const r = (degrees * Math.PI) / 180;
    return [at[0] + (Math.cos(r) * x - Math.sin(r) * y) * lenMm, at[1] + (Math.sin(r) * x + Math.cos(r) * y) * lenMm];
  };
  const scaleOf = (x0: number, x1: number, y: number, w: number, colour: string): void => {
    const outline = smooth(
      [f(x0, y - w * 0.7), f(x0 + (x1 - x0) * 0.45, y - w), f(x1, y * 0.7), f(x0 + (x1 - x0) * 0.45, y + w), f(x0, y + w * 0.7)],
      6,
      true,
    );
    rimmedWash(pen, outline, colour);
    wash(
      pen,
      [f(x0, y), f(x0 + (x1 - x0) * 0.5, y + w * 0.15), f(x1, y * 0.7), f(x0 + (x1 - x0) * 0.45, y + w), f(x0, y + w * 0.7)],
      mix(colour, "#5b3c34", 0.6),
      0.32,
    );
    ink(pen, outline, { closed: true, taper: "none", width: 0.95 });
    ink(pen, [f(x0 + 0.06, y), f(x0 + (x1 - x0) * 0.8, y * 0.8)], { width: 0.45, opacity: 0.6 });
  };
  const tone = pale ? ["#e9dfb9", "#dfe0b0", "#cbd59b"] : ["#c4a184", "#b7b07e", "#a5b87c"];
  scaleOf(0.1, 1.05, 0, 0.2, tone[2] ?? "#a5b87c");
  scaleOf(0.06, 0.86, -0.15, 0.18, tone[1] ?? "#b7b07e");
  scaleOf(0.06, 0.84, 0.16, 0.18, tone[1] ?? "#b7b07e");
  scaleOf(0, 0.62, 0.01, 0.24, tone[0] ?? "#c4a184");
  scaleOf(-0.03, 0.36, -0.16, 0.15, tone[0] ?? "#c4a184");
  scaleOf(-0.03, 0.34, 0.17, 0.15, tone[0] ?? "#c4a184");
}

/** A shoot below ground with scales, white to yellowish. */
function drawFleshyShoot(pen: Pen, foot: PointMm, side: 1 | -1, growth: number, radiusMm: number, lenMm: number): void {
  const L = lenMm * growth;
  const line = resample(
    cubic(
      [foot[0], foot[1] + 3],
      [foot[0] + side * L * 0.3, foot[1] + 9],
      [foot[0] + side * L * 0.75, foot[1] + 13],
      [foot[0] + side * L, foot[1] + 7],
      40,
    ),
    50,
  );
  const r = (t: number): number => radiusMm * (1 - 0.2 * t) * (t > 0.9 ? Math.sqrt(Math.max(0, (1.02 - t) / 0.12)) : 1);
  const tube = band(line, r);
  rimmedWash(pen, tube, "#f1e6cf");
  for (const k of [0, 0.35, 0.6])
    wash(
      pen,
      band(line, (t) => -r(t) * k, r),
      "#b08d6f",
      0.2,
    );
  ink(pen, tube.slice(0, 51), { width: 0.9, taper: "none" });
  ink(pen, tube.slice(51), { width: 1.3, taper: "none" });
  for (let i = 1; i < 8; i += 1) {
    const t = i / 8;
    const { at, normal, degrees } = along(line, t);
    const s = i % 2 === 0 ? 1 : -1;
    const e: PointMm = [at[0] + normal[0] * r(t) * s, at[1] + normal[1] * r(t) * s];
    const scale = smooth(
      [
        [at[0] - normal[0] * r(t) * s * 0.4, at[1] - normal[1] * r(t) * s * 0.4],
        step(e, degrees - s * 10, radiusMm * 0.8),
        step(e, degrees - s * 20, radiusMm * 2 + 0.9),
        e,
      ],
      5,
      true,
    );
    rimmedWash(pen, scale, "#ead6b4");
    ink(pen, scale, { closed: true, taper: "none", width: 0.8 });
    if (i % 2 === 1) roots(pen, at, 6 + radiusMm);
  }
}

function roots(pen: Pen, at: PointMm, lenMm: number): void {
  const all: Hair[] = Array.from({ length: 4 }, () => ({
    at,
    degrees: 90 + pen.random.bell() * 22,
    lengthMm: lenMm * pen.random.between(0.6, 1.3),
    bend: pen.random.bell() * 25,
  }));
  hairs(pen, all, { width: 0.9, colour: "#8d7355", opacity: 0.8 });
}

/** Leaf litter and soil along a line: blades of dead leaves, grass, crumbs. `y` = height of the ground line. */
export function drawGround(
  pen: Pen,
  fromX: number,
  toX: number,
  y: number,
  depth: number,
  season: "winter" | "green",
  litterOnly = false,
): void {
  const w = toX - fromX;
  const top = smooth(
    Array.from({ length: 9 }, (_, i): PointMm => [fromX + (w * i) / 8, y + pen.random.between(-0.03, 0.05) * depth]),
    6,
  );
  const low = smooth(
    Array.from({ length: 9 }, (_, i): PointMm => [
      toX - (w * i) / 8,
      y + depth * (0.35 + 0.5 * Math.sin((Math.PI * i) / 8)) * pen.random.between(0.85, 1.05),
    ]),
    6,
  );
  if (!litterOnly) wash(pen, [...top, ...low], "#a48a66", 0.28);
  if (!litterOnly) wash(pen, [...top, ...low.map((p): PointMm => [p[0], y + (p[1] - y) * 0.5])], "#6f5a43", 0.24);
  for (let i = 0; i < 9; i += 1) {
    const x = pen.random.between(fromX + w * 0.05, toX - w * 0.05);
    const leafY = y + depth * pen.random.between(0.05, 0.4);
    const size = depth * pen.random.between(0.22, 0.4);
    const tilt = pen.random.between(-25, 25);
    const shape = smooth(
      [
        step([x, leafY], tilt, -size),
        step([x, leafY - size * 0.26], tilt, 0),
        step([x, leafY], tilt, size),
        step([x, leafY + size * 0.24], tilt, 0),
      ],
      6,
      true,
    );
    rimmedWash(pen, shape, mix("#b58f5d", "#8a6a4c", pen.random.between(0, 1)), 0.75);
    ink(pen, bow(step([x, leafY], tilt, -size), step([x, leafY], tilt, size), 0.05), { width: 0.5, opacity: 0.6 });
    ink(pen, shape, { closed: true, taper: "none", width: 0.6, opacity: 0.7 });
  }
  const crumbs = Array.from({ length: 50 }, (): PointMm => [pen.random.between(fromX, toX), y + depth * pen.random.between(0.02, 0.55)]);
  for (const c of crumbs) wash(pen, ellipse(c, depth * 0.02, depth * 0.012, 0, 8), "#4b3f30", 0.4);
  const grass: Hair[] = Array.from({ length: season === "green" ? 46 : 26 }, () => ({
    at: [pen.random.between(fromX, toX), y + depth * pen.random.between(-0.02, 0.2)] as const,
    degrees: -90 + pen.random.bell() * 26,
    lengthMm: depth * pen.random.between(0.3, season === "green" ? 0.95 : 0.6),
    bend: pen.random.bell() * 28,
  }));
  hairs(pen, grass, { width: 1.7, colour: season === "green" ? "#8ba368" : "#b9a777", opacity: 0.75 });
  hairs(
    pen,
    grass.filter((_, i) => i % 2 === 0),
    { width: 0.6, opacity: 0.5 },
  );
}
