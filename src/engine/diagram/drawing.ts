/**
 * A drawing as data: shapes with coordinates in millimetres of the plant, x to the right, y downwards. It is not a
 * picture format; `toSvg` writes one, a canvas could draw another.
 */

/** A place in a drawing: x and y in millimetres. */
export type PointMm = readonly [x: number, y: number];

/** How a shape is painted. Colours are `#rrggbb`; a missing fill or stroke is not painted. Opacities are 0-1. */
export interface Paint {
  readonly fill?: string;
  readonly fillOpacity?: number;
  readonly stroke?: string;
  readonly strokeMm?: number;
  readonly strokeOpacity?: number;
}

/** A closed or open outline. `d` is SVG path data with absolute M, L, Q, C and Z only, in millimetres. */
export interface PathShape extends Paint {
  readonly kind: "path";
  readonly id?: string;
  readonly d: string;
}

/** A circle; centre and radius in millimetres. */
export interface CircleShape extends Paint {
  readonly kind: "circle";
  readonly id?: string;
  readonly at: PointMm;
  readonly radiusMm: number;
}

/** A line of type; `sizeMm` is the height of the em. */
export interface TextShape extends Paint {
  readonly kind: "text";
  readonly id?: string;
  readonly at: PointMm;
  readonly text: string;
  readonly sizeMm: number;
  readonly italic?: boolean;
  readonly anchor?: "start" | "middle" | "end";
}

/** Shapes that belong together; `opacity` holds for all of them at once. */
export interface GroupShape {
  readonly kind: "group";
  readonly id?: string;
  readonly opacity?: number;
  readonly shapes: readonly Shape[];
}

export type Shape = PathShape | CircleShape | TextShape | GroupShape;

/** A drawing `widthMm` by `heightMm`, its upper left corner at 0, 0. */
export interface Drawing {
  readonly widthMm: number;
  readonly heightMm: number;
  /**
   * The print magnification the ink was chosen for: printed at this many times true size, the ink line is about
   * 0.25 mm wide. 1 = natural size, 0.25 = a quarter, 20 = twenty times.
   */
  readonly magnification: number;
  readonly shapes: readonly Shape[];
}

/** The true size of one drawn organ: a straight distance between two points of the outline `shapeId`. */
export interface Truth {
  /** Which measure it is, for example "petal length". */
  readonly what: string;
  readonly shapeId: string;
  readonly fromMm: PointMm;
  readonly toMm: PointMm;
  readonly lengthMm: number;
}

/** A drawing with the true size of each organ in it that a reader may measure. */
export interface Figure {
  readonly drawing: Drawing;
  readonly truths: readonly Truth[];
  /** The values the figure was drawn from, as plain words and numbers, for title and description. */
  readonly title: string;
  readonly description: string;
}

/** The points an SVG path of a drawing passes through (end points of its segments), in order. */
export function pathPoints(d: string): readonly PointMm[] {
  const points: PointMm[] = [];
  for (const [, letter, rest] of d.matchAll(/([MLQCZ])([^MLQCZ]*)/g)) {
    const n =
      (rest ?? "").trim() === ""
        ? []
        : (rest ?? "")
            .trim()
            .split(/[\s,]+/)
            .map(Number);
    const step = letter === "Q" ? 4 : letter === "C" ? 6 : 2;
    for (let i = 0; i + step <= n.length; i += step) points.push([n[i + step - 2] ?? NaN, n[i + step - 1] ?? NaN]);
  }
  return points;
}
