/** A friendly dog lying in the grass: the picture on the card that is not a plant. */
import { ellipse, smooth } from "./curve.js";
import type { PointMm } from "./drawing.js";
import { hairs, ink, mix, newPen, rimmedWash, wash } from "./pen.js";
import type { Pen } from "./pen.js";
import type { Drawing } from "./drawing.js";

/** Draws the dog, 160 by 110 (no scale). */
export function drawDog(seed: string): Drawing {
  const pen = newPen(`dog|${seed}`, 0.8);
  const coat = "#c89a63";
  const dark = "#7d5a38";
  const shape = (points: readonly PointMm[], colour: string, line = 1.2): PointMm[] => {
    const outline = smooth(points, 8, true);
    rimmedWash(pen, outline, colour);
    ink(pen, outline, { closed: true, taper: "none", width: line });
    return outline;
  };
  shape(
    [
      [150, 66],
      [157, 54],
      [156, 44],
      [151, 46],
      [147, 58],
      [138, 70],
    ],
    coat,
  );
  shape(
    [
      [44, 62],
      [62, 46],
      [92, 42],
      [124, 46],
      [144, 62],
      [148, 84],
      [128, 96],
      [80, 97],
      [48, 92],
    ],
    coat,
  );
  wash(
    pen,
    smooth(
      [
        [52, 86],
        [90, 80],
        [142, 82],
        [130, 95],
        [80, 96],
      ],
      8,
      true,
    ),
    dark,
    0.28,
  );
  shape(
    [
      [112, 74],
      [128, 62],
      [146, 70],
      [148, 88],
      [134, 97],
      [104, 97],
      [103, 91],
      [122, 90],
    ],
    mix(coat, dark, 0.12),
  );
  shape(
    [
      [58, 84],
      [72, 82],
      [74, 92],
      [44, 98],
      [26, 98],
      [24, 92],
      [40, 90],
    ],
    mix(coat, "#ffffff", 0.18),
  );
  shape(
    [
      [70, 88],
      [84, 86],
      [84, 95],
      [58, 100],
      [42, 100],
      [42, 95],
    ],
    mix(coat, "#ffffff", 0.1),
  );
  shape(
    [
      [26, 42],
      [34, 28],
      [52, 23],
      [68, 30],
      [74, 46],
      [68, 60],
      [52, 66],
      [40, 66],
      [26, 62],
      [16, 58],
      [15, 50],
    ],
    coat,
  );
  shape(
    [
      [15, 50],
      [26, 43],
      [38, 48],
      [40, 58],
      [32, 64],
      [20, 62],
    ],
    "#efdcbc",
  );
  shape(
    [
      [54, 24],
      [68, 24],
      [80, 36],
      [80, 54],
      [72, 58],
      [64, 44],
    ],
    dark,
  );
  shape(
    [
      [36, 27],
      [32, 20],
      [26, 24],
      [24, 36],
      [28, 42],
      [34, 34],
    ],
    mix(dark, "#000000", 0.1),
  );
  shape(
    [
      [13, 49],
      [18, 46],
      [22, 50],
      [18, 54],
      [13, 53],
    ],
    "#2b2623",
  );
  wash(pen, ellipse([16, 48.6], 1.4, 0.7), "#ffffff", 0.7);
  wash(pen, ellipse([38, 41], 2.6, 2.9), "#2b2623");
  wash(pen, ellipse([37.1, 39.9], 0.9, 0.9), "#ffffff");
  ink(
    pen,
    smooth(
      [
        [32, 36],
        [38, 34],
        [43, 37],
      ],
      6,
    ),
    { width: 1 },
  );
  ink(
    pen,
    smooth(
      [
        [18, 55],
        [22, 59],
        [30, 60],
        [37, 56],
      ],
      6,
    ),
    { width: 1.2 },
  );
  shape(
    [
      [24, 60],
      [30, 61],
      [31, 68],
      [27, 70],
      [24, 66],
    ],
    "#d98a8a",
    0.8,
  );
  fur(pen);
  return { widthMm: 160, heightMm: 110, magnification: pen.magnification, shapes: pen.shapes };
}

function fur(pen: Pen): void {
  const r = pen.random;
  hairs(
    pen,
    Array.from({ length: 170 }, () => ({
      at: [r.between(56, 138), r.between(50, 88)] as const,
      degrees: r.between(5, 40),
      lengthMm: r.between(2, 5),
      bend: r.between(-10, 25),
    })),
    { width: 0.8, opacity: 0.35 },
  );
  hairs(
    pen,
    Array.from({ length: 60 }, () => ({
      at: [r.between(40, 62), r.between(46, 60)] as const,
      degrees: r.between(30, 80),
      lengthMm: r.between(1.5, 4),
      bend: 15,
    })),
    { width: 0.8, opacity: 0.35 },
  );
  hairs(
    pen,
    Array.from({ length: 130 }, () => ({
      at: [r.between(0, 160), r.between(97, 106)] as const,
      degrees: -90 + r.bell() * 20,
      lengthMm: r.between(6, 16),
      bend: r.bell() * 25,
    })),
    { width: 2.6, colour: "#7f9a5c", opacity: 0.9 },
  );
}
