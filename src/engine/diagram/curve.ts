/** Points and curves in the plane, in millimetres: frames, arcs, smooth lines, lines beside lines. */
import type { PointMm } from "./drawing.js";

/** A plane map: x' = a x + c y + e, y' = b x + d y + f. */
export interface Frame {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

/** Puts the origin at `at`, turns by `degrees` (clockwise on screen, since y runs down), then scales along the turned axes. */
export function frameAt(at: PointMm, degrees = 0, scaleX = 1, scaleY = scaleX): Frame {
  const r = (degrees * Math.PI) / 180;
  const cos = Math.cos(r);
  const sin = Math.sin(r);
  return { a: cos * scaleX, b: sin * scaleX, c: -sin * scaleY, d: cos * scaleY, e: at[0], f: at[1] };
}

/** The point `p` of the frame's inner plane as seen outside. */
export function put(frame: Frame, p: PointMm): PointMm {
  return [frame.a * p[0] + frame.c * p[1] + frame.e, frame.b * p[0] + frame.d * p[1] + frame.f];
}

/** The map "first inner, then outer". */
export function within(outer: Frame, inner: Frame): Frame {
  const o = put(outer, [inner.e, inner.f]);
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: o[0],
    f: o[1],
  };
}

export function distance(p: PointMm, q: PointMm): number {
  return Math.hypot(p[0] - q[0], p[1] - q[1]);
}

export function between(p: PointMm, q: PointMm, t: number): PointMm {
  return [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t];
}

/** Direction from p to q in degrees, clockwise on screen from the x axis. */
function bearing(p: PointMm, q: PointMm): number {
  return (Math.atan2(q[1] - p[1], q[0] - p[0]) * 180) / Math.PI;
}

/** `n + 1` points of a cubic Bézier curve. */
export function cubic(p0: PointMm, p1: PointMm, p2: PointMm, p3: PointMm, n = 12): PointMm[] {
  const out: PointMm[] = [];
  for (let i = 0; i <= n; i += 1) {
    const t = i / n;
    const s = 1 - t;
    const w0 = s * s * s;
    const w1 = 3 * s * s * t;
    const w2 = 3 * s * t * t;
    const w3 = t * t * t;
    out.push([w0 * p0[0] + w1 * p1[0] + w2 * p2[0] + w3 * p3[0], w0 * p0[1] + w1 * p1[1] + w2 * p2[1] + w3 * p3[1]]);
  }
  return out;
}

/** A flat arc from `p` to `q`; `sagitta` = height of the bow as a share of the chord, positive to the left of the way on screen. */
export function bow(p: PointMm, q: PointMm, sagitta: number, n = 16): PointMm[] {
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  const out: PointMm[] = [];
  for (let i = 0; i <= n; i += 1) {
    const t = i / n;
    const h = 4 * t * (1 - t) * sagitta;
    out.push([p[0] + dx * t + dy * h, p[1] + dy * t - dx * h]);
  }
  return out;
}

/** A smooth line through the points (Catmull-Rom, uniform), `n` steps between two of them. */
export function smooth(points: readonly PointMm[], n = 8, closed = false): PointMm[] {
  const out: PointMm[] = [];
  const count = points.length;
  const at = (i: number): PointMm => points[closed ? (i + count) % count : Math.max(0, Math.min(count - 1, i))] ?? [0, 0];
  const last = closed ? count : count - 1;
  for (let i = 0; i < last; i += 1) {
    const [p0, p1, p2, p3] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    for (let k = 0; k < n; k += 1) {
      const t = k / n;
      const f = (a: number, b: number, c: number, d: number): number =>
        0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t * t + (3 * b - a - 3 * c + d) * t * t * t);
      out.push([f(p0[0], p1[0], p2[0], p3[0]), f(p0[1], p1[1], p2[1], p3[1])]);
    }
  }
  if (!closed) out.push(at(count - 1));
  return out;
}

/** A closed ring of points of an ellipse. */
export function ellipse(at: PointMm, rx: number, ry: number, degrees = 0, n = 24): PointMm[] {
  const frame = frameAt(at, degrees);
  return Array.from({ length: n }, (_, i) => {
    const a = (2 * Math.PI * i) / n;
    return put(frame, [rx * Math.cos(a), ry * Math.sin(a)]);
  });
}

/** The same line with points at equal steps: `n + 1` of them. */
export function resample(points: readonly PointMm[], n: number): PointMm[] {
  const lengths = [0];
  for (let i = 1; i < points.length; i += 1) lengths.push((lengths[i - 1] ?? 0) + distance(points[i - 1] ?? [0, 0], points[i] ?? [0, 0]));
  const total = lengths[lengths.length - 1] ?? 0;
  const out: PointMm[] = [];
  let j = 1;
  for (let i = 0; i <= n; i += 1) {
    const s = (total * i) / n;
    while (j < points.length - 1 && (lengths[j] ?? 0) < s) j += 1;
    const s0 = lengths[j - 1] ?? 0;
    const s1 = lengths[j] ?? s0;
    out.push(between(points[j - 1] ?? [0, 0], points[j] ?? points[j - 1] ?? [0, 0], s1 > s0 ? Math.min(1, (s - s0) / (s1 - s0)) : 0));
  }
  return out;
}

/** Length of a line of points, in millimetres. */
export function lineLength(points: readonly PointMm[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i += 1) sum += distance(points[i - 1] ?? [0, 0], points[i] ?? [0, 0]);
  return sum;
}

/** Point and left-hand unit normal (on screen) at share `t` of a line of points taken as evenly spaced. */
export function along(points: readonly PointMm[], t: number): { readonly at: PointMm; readonly normal: PointMm; readonly degrees: number } {
  const n = points.length - 1;
  const x = Math.max(0, Math.min(1, t)) * n;
  const i = Math.min(n - 1, Math.floor(x));
  const at = between(points[i] ?? [0, 0], points[i + 1] ?? [0, 0], x - i);
  const p = points[Math.max(0, i - (x - i < 0.5 ? 1 : 0))] ?? at;
  const q = points[Math.min(n, i + (x - i < 0.5 ? 1 : 2))] ?? at;
  const l = distance(p, q) || 1;
  return { at, normal: [(q[1] - p[1]) / l, -(q[0] - p[0]) / l], degrees: bearing(p, q) };
}

/** The line beside a line, `offset(t)` millimetres to its left. */
export function beside(points: readonly PointMm[], offset: (t: number) => number): PointMm[] {
  const n = points.length - 1;
  return points.map((p, i) => {
    const { normal } = along(points, i / n);
    const o = offset(i / n);
    return [p[0] + normal[0] * o, p[1] + normal[1] * o];
  });
}

/** The outline of a band about a line: left side out, right side back. Widths in millimetres to each side. */
export function band(points: readonly PointMm[], left: (t: number) => number, right: (t: number) => number = left): PointMm[] {
  return [...beside(points, left), ...beside(points, (t) => -right(t)).reverse()];
}
