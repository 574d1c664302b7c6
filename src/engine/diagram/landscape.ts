/** A quiet view of a spot in line and flat washes, by its setting: ditch, woodland, open ground, fen, mountain. Not to scale. */
import { smooth } from "./curve.js";
import type { PointMm } from "./drawing.js";
import { hairs, ink, mix, rimmedWash, step, wash } from "./pen.js";
import type { Hair, Pen } from "./pen.js";

export type Setting = "ditch" | "woodland" | "open" | "fen" | "mountain";

/** Draws the view into a field of this size; `winter` = dead reeds and bare trees. */
export function drawLandscape(pen: Pen, w: number, h: number, setting: Setting, winter: boolean): void {
  const r = pen.random;
  const horizon = h * r.between(0.4, 0.46);
  const sky = winter ? "#d9dcd8" : "#cfdde0";
  wash(pen, box(0, 0, w, horizon * 1.1), sky);
  for (let i = 0; i < 5; i += 1) {
    const y = horizon * r.between(0.1, 0.75);
    const x = w * r.between(0, 1);
    const cw = w * r.between(0.16, 0.36);
    wash(
      pen,
      smooth(
        Array.from({ length: 10 }, (_, k): PointMm => [
          x + cw * Math.cos((k * Math.PI) / 5),
          y + cw * 0.13 * Math.sin((k * Math.PI) / 5) * r.between(0.6, 1.2),
        ]),
        6,
        true,
      ),
      "#f4f3ec",
      0.55,
    );
  }
  const hill = (base: number, height: number, colour: string, n: number): PointMm[] => {
    const top = smooth(
      Array.from({ length: n + 1 }, (_, i): PointMm => [(w * i) / n, base - height * r.between(0.2, 1)]),
      8,
    );
    wash(pen, [...top, [w, h], [0, h]], colour, 0.95);
    return top;
  };
  if (setting === "mountain") {
    ink(pen, hill(horizon, h * 0.26, "#a9b4b6", 6), { width: 0.8, opacity: 0.5 });
    ink(pen, hill(horizon * 1.05, h * 0.16, "#93a39a", 8), { width: 0.9, opacity: 0.6 });
  } else ink(pen, hill(horizon, h * 0.06, winter ? "#b3b3a6" : "#a9b8a3", 9), { width: 0.7, opacity: 0.45 });
  for (let i = 0; i < 26; i += 1)
    farTree(pen, [w * r.between(-0.02, 1.02), horizon + h * r.between(-0.005, 0.02)], h * r.between(0.04, 0.1), winter);
  const ground = winter ? "#bfae86" : "#a8b57d";
  wash(
    pen,
    [
      [0, horizon],
      ...smooth(
        [
          [0, horizon],
          [w * 0.3, horizon - h * 0.012],
          [w * 0.7, horizon + h * 0.012],
          [w, horizon],
        ],
        8,
      ),
      [w, h],
      [0, h],
    ],
    ground,
  );
  for (const [k, o] of [
    [0.12, 0.2],
    [0.34, 0.22],
    [0.6, 0.25],
  ] as const)
    wash(
      pen,
      smooth(
        [
          [0, horizon + (h - horizon) * k],
          [w * 0.4, horizon + (h - horizon) * (k + 0.05)],
          [w, horizon + (h - horizon) * (k - 0.03)],
          [w, h],
          [0, h],
        ],
        8,
      ),
      mix(ground, "#5d6b46", 0.6),
      o,
    );
  const depth = h - horizon;
  if (setting === "ditch" || setting === "fen") {
    const c = setting === "ditch" ? 0.56 : 0.38;
    const left = smooth(
      [
        [w * (c - 0.005), horizon + depth * 0.04],
        [w * (c - 0.04), horizon + depth * 0.3],
        [w * (c - 0.02), horizon + depth * 0.6],
        [w * (c - 0.2), h],
      ],
      10,
    );
    const right = smooth(
      [
        [w * (c + 0.012), horizon + depth * 0.04],
        [w * (c + 0.03), horizon + depth * 0.3],
        [w * (c + 0.17), horizon + depth * 0.62],
        [w * (c + 0.36), h],
      ],
      10,
    );
    rimmedWash(pen, [...left, ...right.slice().reverse()], "#b9cbd0");
    wash(
      pen,
      [
        ...left,
        ...left
          .slice()
          .reverse()
          .map((p, i): PointMm => [p[0] + (left.length - i) * 0.012 * w * 0.4, p[1]]),
      ],
      "#5f7d80",
      0.35,
    );
    for (let i = 0; i < 26; i += 1) {
      const t = r.between(0.1, 0.98);
      const k = Math.round(t * (left.length - 1));
      const a = left[k] ?? [0, 0];
      const b = right[k] ?? a;
      const x = a[0] + (b[0] - a[0]) * r.between(0.1, 0.7);
      ink(
        pen,
        [
          [x, a[1]],
          [x + (b[0] - a[0]) * r.between(0.08, 0.25), a[1] + 0.1],
        ],
        { width: 0.7, opacity: 0.55 },
      );
    }
    ink(pen, left, { width: 1, taper: "start" });
    ink(pen, right, { width: 1.2, taper: "start" });
    if (setting === "fen")
      for (let i = 0; i < 7; i += 1) {
        const y = h - depth * 0.02 - i * depth * 0.1 * (1 - i * 0.06);
        const s = 1 - i * 0.11;
        const x = w * (0.72 - i * 0.02);
        rimmedWash(pen, box(x - w * 0.12 * s, y - depth * 0.055 * s, w * 0.24 * s, depth * 0.05 * s), winter ? "#a79c87" : "#b5a88d");
        ink(
          pen,
          [
            [x - w * 0.12 * s, y - depth * 0.005 * s],
            [x + w * 0.12 * s, y - depth * 0.005 * s],
          ],
          { width: 1.2 },
        );
      }
    for (const [line, out] of [
      [left, -1],
      [right, 1],
    ] as const)
      for (let i = 0; i < 120; i += 1) {
        const t = Math.sqrt(r.between(0.02, 1));
        const p = line[Math.round(t * (line.length - 1))] ?? [0, 0];
        reed(pen, [p[0] + out * w * r.between(0, 0.07) * t, p[1] + depth * r.between(-0.02, 0.02)], depth * (0.06 + 0.42 * t * t), winter);
      }
  }
  if (setting === "woodland") {
    const path = (x0: number, x1: number): PointMm[] =>
      smooth(
        [
          [w * 0.5, horizon + depth * 0.02],
          [w * (0.5 + (x0 - 0.5) * 0.25), horizon + depth * 0.3],
          [w * (0.5 + (x0 - 0.5) * 0.6), horizon + depth * 0.65],
          [w * x1, h],
        ],
        10,
      );
    rimmedWash(pen, [...path(0.3, 0.26), ...path(0.66, 0.72).reverse()], winter ? "#c9b795" : "#c6b88f");
    for (let i = 0; i < 11; i += 1) {
      const far = i / 10;
      const s = 0.3 + 0.9 * far;
      const x = i % 2 === 0 ? w * (0.44 - 0.46 * far) : w * (0.56 + 0.46 * far);
      ash(pen, [x + w * r.between(-0.02, 0.02), horizon + depth * (0.03 + 0.6 * far * far)], h * 0.62 * s, winter);
    }
  }
  if (setting === "open") {
    const wall = [
      [0, horizon - h * 0.16],
      [w * 0.36, horizon - h * 0.13],
      [w * 0.36, horizon + h * 0.04],
      [0, horizon + h * 0.06],
    ] as const;
    rimmedWash(
      pen,
      wall.map((p): PointMm => [p[0], p[1]]),
      "#b6a492",
    );
    wash(
      pen,
      [
        [0, horizon - h * 0.27],
        [w * 0.3, horizon - h * 0.23],
        [w * 0.39, horizon - h * 0.125],
        [0, horizon - h * 0.15],
      ],
      "#8d7f78",
    );
    ink(
      pen,
      [
        [0, horizon - h * 0.27],
        [w * 0.3, horizon - h * 0.23],
        [w * 0.39, horizon - h * 0.125],
        [0, horizon - h * 0.15],
      ],
      { taper: "none" },
    );
    for (let i = 0; i < 8; i += 1)
      for (let k = 0; k < 6; k += 1)
        ink(
          pen,
          [
            [w * (0.02 + k * 0.057 + (i % 2) * 0.02), horizon - h * (0.13 - i * 0.024)],
            [w * (0.05 + k * 0.057 + (i % 2) * 0.02), horizon - h * (0.128 - i * 0.024)],
          ],
          { width: 0.6, opacity: 0.45 },
        );
    rimmedWash(pen, box(w * 0.12, horizon - h * 0.1, w * 0.07, h * 0.145), "#5d6b62");
    ink(pen, box(w * 0.12, horizon - h * 0.1, w * 0.07, h * 0.145), { closed: true, taper: "none", width: 0.8 });
    rimmedWash(
      pen,
      smooth(
        [
          [0, horizon + depth * 0.3],
          [w * 0.5, horizon + depth * 0.2],
          [w, horizon + depth * 0.36],
          [w, horizon + depth * 0.78],
          [w * 0.5, horizon + depth * 0.62],
          [0, horizon + depth * 0.72],
        ],
        8,
      ),
      "#d2c8b4",
      0.9,
    );
    for (let i = 0; i < 260; i += 1) {
      const p: PointMm = [w * r.between(0, 1), horizon + depth * r.between(0.25, 0.75)];
      const s = w * 0.004 * (0.4 + (p[1] - horizon) / depth);
      wash(
        pen,
        [
          [p[0] - s, p[1]],
          [p[0], p[1] - s * 0.7],
          [p[0] + s, p[1]],
          [p[0], p[1] + s * 0.6],
        ],
        mix("#8d857a", "#e8e2d4", r.between(0, 1)),
        0.8,
      );
    }
  }
  if (setting === "mountain")
    for (let i = 0; i < 24; i += 1) {
      const t = r.between(0.1, 1);
      const at: PointMm = [w * r.between(0, 1), horizon + depth * t];
      const s = w * 0.035 * t * r.between(0.5, 1.2);
      const stone = smooth(
        [step(at, 180, s), step(at, 235, s * 0.7), step(at, 300, s * 0.7), step(at, 0, s), step(at, 90, s * 0.3)],
        5,
        true,
      );
      rimmedWash(pen, stone, "#b8b6ae");
      ink(pen, stone, { closed: true, taper: "none", width: 0.8 });
    }
  for (let i = 0; i < 330; i += 1) {
    const t = Math.sqrt(r.between(0.05, 1));
    if (setting === "open" && t > 0.5 && t < 0.84) continue;
    const x = w * r.between(0, 1);
    if ((setting === "ditch" || setting === "fen") && Math.abs(x / w - (setting === "ditch" ? 0.6 : 0.42)) < 0.16 * t) continue;
    if (setting === "woodland" && Math.abs(x / w - 0.5) < 0.22 * t) continue;
    tuft(pen, [x, horizon + depth * t], depth * 0.12 * t * t + 0.4, winter);
  }
  for (let i = 0; i < 9; i += 1)
    willowherbFar(
      pen,
      [w * (0.14 + 0.022 * i + r.between(-0.01, 0.01)), h - depth * r.between(0.1, 0.2)],
      depth * r.between(0.38, 0.55),
      winter,
    );
}

function box(x: number, y: number, w: number, h: number): PointMm[] {
  return [
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
  ];
}

function farTree(pen: Pen, foot: PointMm, size: number, winter: boolean): void {
  const crown = smooth(
    Array.from({ length: 9 }, (_, i): PointMm => [
      foot[0] + Math.cos((i * 2 * Math.PI) / 9) * size * 0.55 * pen.random.between(0.75, 1.15),
      foot[1] - size * 0.65 + Math.sin((i * 2 * Math.PI) / 9) * size * 0.5 * pen.random.between(0.8, 1.1),
    ]),
    5,
    true,
  );
  wash(pen, crown, winter ? "#9a948a" : mix("#7f9680", "#9fb08f", pen.random.between(0, 1)), winter ? 0.35 : 0.75);
  ink(pen, [foot, [foot[0], foot[1] - size * 0.6]], { width: 0.9, opacity: 0.6 });
  if (winter)
    hairs(
      pen,
      Array.from({ length: 12 }, () => ({
        at: [foot[0], foot[1] - size * pen.random.between(0.25, 0.6)] as const,
        degrees: -90 + pen.random.bell() * 34,
        lengthMm: size * pen.random.between(0.25, 0.6),
        bend: pen.random.bell() * 14,
      })),
      { width: 0.6, opacity: 0.6 },
    );
}

function reed(pen: Pen, at: PointMm, size: number, winter: boolean): void {
  const all: Hair[] = Array.from({ length: 3 }, () => ({
    at: [at[0] + pen.random.between(-0.1, 0.1) * size, at[1]] as const,
    degrees: -90 + pen.random.bell() * 11,
    lengthMm: size * pen.random.between(0.6, 1.1),
    bend: pen.random.bell() * 22,
  }));
  hairs(pen, all, {
    width: 1.1 + size * 0.14,
    colour: mix(winter ? "#c0a873" : "#849a5e", winter ? "#9a8156" : "#a9b87a", pen.random.between(0, 1)),
    opacity: 0.92,
  });
  hairs(pen, all.slice(0, 1), { width: 0.6, opacity: 0.6 });
}

function tuft(pen: Pen, at: PointMm, size: number, winter: boolean): void {
  const all: Hair[] = Array.from({ length: 4 }, () => ({
    at,
    degrees: -90 + pen.random.bell() * 24,
    lengthMm: size * pen.random.between(0.5, 1.2),
    bend: pen.random.bell() * 24,
  }));
  hairs(pen, all, {
    width: 0.9,
    colour: mix(winter ? "#a08c5c" : "#6f8750", winter ? "#d0bf8e" : "#b3c286", pen.random.between(0, 1)),
    opacity: 0.85,
  });
}

function ash(pen: Pen, foot: PointMm, size: number, winter: boolean): void {
  const r = size * 0.028;
  const top: PointMm = [foot[0] + size * pen.random.between(-0.05, 0.05), foot[1] - size];
  const trunk = [
    ...smooth(
      [
        [foot[0] - r * 1.6, foot[1]],
        [foot[0] - r, foot[1] - size * 0.1],
        [top[0] - r * 0.4, top[1]],
      ],
      6,
    ),
    ...smooth(
      [
        [top[0] + r * 0.4, top[1]],
        [foot[0] + r, foot[1] - size * 0.1],
        [foot[0] + r * 1.7, foot[1]],
      ],
      6,
    ),
  ];
  rimmedWash(pen, trunk, "#8f8a7c");
  wash(pen, [...trunk.slice(trunk.length / 2), [foot[0] + r * 0.2, foot[1]], [top[0], top[1]]], "#5a574c", 0.35);
  ink(pen, trunk, { width: 0.9, taper: "none" });
  for (let i = 0; i < 9; i += 1) {
    const y = foot[1] - size * pen.random.between(0.45, 0.98);
    const s = i % 2 === 0 ? 1 : -1;
    const from: PointMm = [foot[0] + (top[0] - foot[0]) * 0.7, y];
    const to = step(from, s === 1 ? -38 : -142, size * pen.random.between(0.16, 0.32));
    ink(pen, smooth([from, step(from, s === 1 ? -20 : -160, size * 0.08), to], 5), { width: 1.5, taper: "end" });
    if (!winter) {
      const crown = smooth(
        Array.from({ length: 8 }, (_, k): PointMm => [
          to[0] + Math.cos((k * Math.PI) / 4) * size * 0.15 * pen.random.between(0.7, 1.2),
          to[1] + Math.sin((k * Math.PI) / 4) * size * 0.11 * pen.random.between(0.7, 1.2),
        ]),
        5,
        true,
      );
      wash(pen, crown, mix("#7f9a6a", "#a6ba7e", pen.random.between(0, 1)), 0.6);
    } else
      hairs(
        pen,
        Array.from({ length: 5 }, () => ({
          at: to,
          degrees: -90 + s * 30 + pen.random.bell() * 22,
          lengthMm: size * pen.random.between(0.06, 0.14),
          bend: -s * 12,
        })),
        { width: 0.7, opacity: 0.8 },
      );
  }
}

function willowherbFar(pen: Pen, foot: PointMm, size: number, winter: boolean): void {
  const lean = pen.random.bell() * 0.05 * size;
  const line = smooth([foot, [foot[0] + lean * 0.4, foot[1] - size * 0.5], [foot[0] + lean, foot[1] - size]], 8);
  ink(pen, line, { width: 1.8, taper: "end", colour: winter ? "#7d6245" : "#5f7446" });
  const all: Hair[] = [];
  for (let i = 2; i < 14; i += 1) {
    const p = line[i] ?? foot;
    for (const s of [1, -1])
      all.push({
        at: p,
        degrees: -90 + s * pen.random.between(30, 58) * (winter ? 0.6 : 1),
        lengthMm: size * (0.17 - i * 0.006),
        bend: s * 22,
      });
  }
  hairs(pen, all, { width: winter ? 1.1 : 3.2, colour: winter ? "#8d7350" : "#7d975c", opacity: 0.95 });
  hairs(pen, all, { width: 0.5, opacity: 0.6 });
}
