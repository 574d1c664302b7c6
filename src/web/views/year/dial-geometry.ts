/**
 * Where things stand on the dial. The year runs clockwise; a gap at the top, between 31 December and 1 January, holds the
 * names of the rings. Angles are in radians clockwise from the top; lengths are in units of the drawing.
 */

/** Half the gap at the top, radians. */
export const gap = (21 * Math.PI) / 180;
/** Half the side of the drawing. */
export const half = 330;

const dayMs = 86_400_000;
/** Days of a year. */
export const daysOf = (year: number): number => Math.round((Date.UTC(year + 1, 0, 1) - Date.UTC(year, 0, 1)) / dayMs);
/** Place in the year, 0 = begin of 1 January, 1 = end of 31 December; at midday of a date. Outside the year it is cut. */
export const placeOf = (date: string, year: number): number =>
  Math.min(1, Math.max(0, (Date.parse(`${date}T12:00:00Z`) - Date.UTC(year, 0, 1)) / dayMs / daysOf(year)));
/** Angle of a place in the year. */
export const angleOf = (place: number): number => gap + place * (2 * Math.PI - 2 * gap);
/** Point at an angle and radius, as [x, y]. */
export const pointAt = (angle: number, radius: number): readonly [number, number] => [radius * Math.sin(angle), -radius * Math.cos(angle)];

const f = (value: number): string => value.toFixed(2);

/** Path of a band between two angles, `thickness` wide about `radius`. */
export const bandPath = (from: number, to: number, radius: number, thickness: number): string => {
  const [outer, inner] = [radius + thickness / 2, radius - thickness / 2];
  const large = to - from > Math.PI ? 1 : 0;
  const [ax, ay] = pointAt(from, outer);
  const [bx, by] = pointAt(to, outer);
  const [cx, cy] = pointAt(to, inner);
  const [dx, dy] = pointAt(from, inner);
  return `M${f(ax)} ${f(ay)}A${f(outer)} ${f(outer)} 0 ${large} 1 ${f(bx)} ${f(by)}L${f(cx)} ${f(cy)}A${f(inner)} ${f(inner)} 0 ${large} 0 ${f(dx)} ${f(dy)}Z`;
};

/** How far an arc reaches to each side of the outing it comes from, at most: what was seen says nothing of two months later. */
const reachDays = 24;

/**
 * From where to where each mark's arc runs, as places in the year: half way to the neighbouring outings of the same ring,
 * at most {@link reachDays} days.
 */
export const arcSpans = (dates: readonly string[], year: number): readonly (readonly [number, number])[] => {
  const reach = reachDays / daysOf(year);
  const places = dates.map((date) => placeOf(date, year));
  return places.map((place, index) => {
    const before = places[index - 1];
    const after = places[index + 1];
    return [
      Math.max(0, place - reach, before === undefined ? 0 : (place + before) / 2),
      Math.min(1, place + reach, after === undefined ? 1 : (place + after) / 2),
    ];
  });
};

/** Radii of the rings, outermost first, and how thick their bands may be. */
export const ringRadii = (count: number): { readonly radii: readonly number[]; readonly thickness: number } => {
  const [outermost, innermost] = [272, 104];
  const step = count <= 1 ? 30 : Math.min(30, (outermost - innermost) / (count - 1));
  return { radii: Array.from({ length: count }, (_, index) => outermost - index * step), thickness: step * 0.8 };
};
