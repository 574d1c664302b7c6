/**
 * How far a camera's clock is from the phone's, found from the walk itself: the shift that puts most photographs inside
 * the stops.
 *
 * Derivation. A photograph with camera time c lies in the stop [f, t] after the shift s exactly when f - c <= s <= t - c.
 * So each photograph allows a union of closed intervals of s, one for each stop within reach, and the question is which s
 * lies in most unions: the point of greatest overlap of intervals, found exactly by sorting the end points and sweeping
 * once over them (de Berg, Cheong, van Kreveld & Overmars 2008, Computational Geometry, 3rd ed., chapter 2 on plane sweep;
 * here in one dimension). O(k log k) for k end points. Times are whole seconds, so nothing is lost by counting in seconds.
 *
 * A shift is proposed only when it can be trusted. A rival is another shift at which photographs lie in *other* stops:
 * moving a shift by a few seconds loses a photograph or two at the rims and is no rival. The margins below are our own
 * choice, common sense without source.
 */
import { secondsOf } from "../base/dates.js";
import type { LocalTime } from "../base/dates.js";

/** A halt of the walk, by the phone's clock; both ends belong to it. */
export interface StopTimes {
  readonly from: LocalTime;
  readonly to: LocalTime;
}

/** Why no shift is proposed. */
export type ShiftDoubt =
  /** Fewer photographs with a time than {@link minPhotos}. */
  | "too-few-photographs"
  /** No stops, or the photographs fall into one only: any shift that reaches it would do. */
  | "too-few-stops"
  /** Even the best shift leaves most photographs of the walk between the stops. */
  | "most-lie-between-stops"
  /** Another shift, which gives other plants, does nearly as well. */
  | "several-shifts-fit";

export interface ClockShift {
  /** Seconds to add to the camera's time; null when no shift can be trusted, `doubt` says why. */
  readonly proposedS: number | null;
  readonly doubt: ShiftDoubt | null;
  /** Photographs looked at. */
  readonly photoCount: number;
  /** How many lie inside a stop with the times as they are. */
  readonly insideBefore: number;
  /** How many lie inside a stop after the best shift. */
  readonly insideAfter: number;
  /** The shifts that do equally well, first and last, seconds; null when no photograph can be put into any stop. */
  readonly equallyGood: { readonly fromS: number; readonly toS: number } | null;
  /** The best shift that puts photographs into other stops, and how many it puts inside; null when there is none. */
  readonly rival: { readonly shiftS: number; readonly inside: number } | null;
}

/** The longest shift looked for, two days: a wrong date is a matter for a person. Seconds. */
export const maxShiftS = 172_800;

/** Fewer photographs than this say nothing about a clock. */
export const minPhotos = 5;

const minShareInside = 0.7;
/**
 * The middle is taken of the run in which at most this share of photographs is lost: otherwise one photograph of the lunch,
 * which just reaches a stop at one end of the run, would pull the shift to that end.
 */
const toleratedShare = 0.01;
/** Photographs this near to the first or last stop belong to the walk when the share is taken, seconds. */
const walkRimS = 900;
/** How far a rival must stay behind, in photographs and as a share of those inside. */
const rivalMargin = { count: 2, share: 0.05 } as const;
/** A rival puts more than this share of the photographs both have inside into other stops. */
const rivalShare = 0.1;

interface Span {
  readonly from: number;
  readonly to: number;
}
/** A run of shifts with the same number of photographs inside. */
interface Segment extends Span {
  readonly inside: number;
}

/**
 * The shift that puts most photographs into stops. Give one outing, or several of the same camera together: a stop is only
 * looked at when it lies within {@link maxShiftS} of a photograph, so outings far apart do not disturb one another and a
 * shift that is constant through the year is found from all of them at once.
 *
 * @param photos - Times by the camera's clock; leave out photographs without a time.
 * @param stops - By the phone's clock, any order; stops that overlap are allowed.
 */
export const clockShift = (photos: readonly LocalTime[], stops: readonly StopTimes[]): ClockShift => {
  const times = photos.map(secondsOf).toSorted((a, b) => a - b);
  const spans = stops
    .map((stop) => ({ from: secondsOf(stop.from), to: secondsOf(stop.to) }))
    .filter((span) => span.to >= span.from)
    .toSorted((a, b) => a.from - b.from || a.to - b.to);
  const segments = sweep(times, spans);
  const most = segments.reduce((best, segment) => Math.max(best, segment.inside), 0);
  const insideBefore = segments.find((segment) => segment.from <= 0 && segment.to >= 0)?.inside ?? 0;
  const nothing = { photoCount: times.length, insideBefore, insideAfter: most };
  if (most === 0) {
    const doubt = times.length < minPhotos ? "too-few-photographs" : spans.length < 2 ? "too-few-stops" : "most-lie-between-stops";
    return { proposedS: null, doubt, ...nothing, equallyGood: null, rival: null };
  }
  // Among equally good runs the widest is the least likely to be an accident; then the one nearest to no shift.
  const best = segments
    .filter((segment) => segment.inside === most)
    .reduce((a, b) => {
      const wider = b.to - b.from - (a.to - a.from);
      return wider > 0 || (wider === 0 && Math.abs(middleOf(b)) < Math.abs(middleOf(a))) ? b : a;
    });
  const near = widenedBy(segments, best, Math.floor(toleratedShare * most));
  const bestS = near.from <= 0 && near.to >= 0 ? 0 : middleOf(near);
  const here = stopsAt(times, spans, bestS);
  const rival = findRival({ segments, times, spans, here, floor: most / 2 });
  const margin = Math.max(rivalMargin.count, Math.ceil(rivalMargin.share * most));
  const used = new Set(here.filter((index) => index >= 0));
  const onWalk = countOnWalk(times, spans, bestS);
  const doubt: ShiftDoubt | null =
    times.length < minPhotos
      ? "too-few-photographs"
      : used.size < 2
        ? "too-few-stops"
        : most < minPhotos || most < minShareInside * onWalk
          ? "most-lie-between-stops"
          : rival !== null && rival.inside > most - margin
            ? "several-shifts-fit"
            : null;
  return { proposedS: doubt === null ? bestS : null, doubt, ...nothing, equallyGood: { fromS: best.from, toS: best.to }, rival };
};

/** How many photographs lie inside a stop after `shiftS` seconds are added to their times. */
export const countInside = (photos: readonly LocalTime[], stops: readonly StopTimes[], shiftS: number): number => {
  const spans = stops
    .map((stop) => ({ from: secondsOf(stop.from), to: secondsOf(stop.to) }))
    .toSorted((a, b) => a.from - b.from || a.to - b.to);
  return stopsAt(photos.map(secondsOf), spans, shiftS).filter((index) => index >= 0).length;
};

/** The run around `best` in which at most `fewer` photographs less lie inside. */
const widenedBy = (segments: readonly Segment[], best: Segment, fewer: number): Span => {
  const index = segments.indexOf(best);
  const holds = (at: number, beside: number): boolean => (segments[at]?.inside ?? 0) >= best.inside - fewer && beside === 1;
  let first = index;
  let last = index;
  while (holds(first - 1, (segments[first]?.from ?? 0) - (segments[first - 1]?.to ?? Infinity))) first -= 1;
  while (holds(last + 1, (segments[last + 1]?.from ?? Infinity) - (segments[last]?.to ?? 0))) last += 1;
  return { from: segments[first]?.from ?? best.from, to: segments[last]?.to ?? best.to };
};

const middleOf = (span: Span): number => Math.round((span.from + span.to) / 2);

/** All runs of shifts within reach with their counts, in order, gaps with a count of 0 included where a run ends. */
const sweep = (times: readonly number[], spans: readonly Span[]): readonly Segment[] => {
  const reach: Span[] = [];
  const longest = longestOf(spans);
  for (const time of times) {
    let open: Span | null = null;
    // Spans are in order of their beginning, so overlapping ones are merged: a photograph counts once.
    for (let index = firstWithin(spans, longest, time - maxShiftS); index < spans.length; index += 1) {
      const span = spans[index];
      if (span === undefined || span.from > time + maxShiftS) break;
      const from = Math.max(span.from - time, -maxShiftS);
      const to = Math.min(span.to - time, maxShiftS);
      if (to < from) continue;
      if (open !== null && from <= open.to + 1) {
        open = { from: open.from, to: Math.max(open.to, to) };
        continue;
      }
      if (open !== null) reach.push(open);
      open = { from, to };
    }
    if (open !== null) reach.push(open);
  }
  return segmentsOf(reach);
};

/** How many intervals hold at each shift: runs with their counts, in order. */
const segmentsOf = (intervals: readonly Span[]): readonly Segment[] => {
  const change = new Map<number, number>();
  const add = (at: number, by: number): void => {
    change.set(at, (change.get(at) ?? 0) + by);
  };
  for (const { from, to } of intervals) {
    add(from, 1);
    add(to + 1, -1);
  }
  const points = [...change.entries()].toSorted((a, b) => a[0] - b[0]);
  const segments: Segment[] = [];
  let inside = 0;
  for (const [index, [at, by]] of points.entries()) {
    inside += by;
    const next = points[index + 1];
    // Where one photograph leaves as another comes in, the count stays: one run.
    const last = segments.at(-1);
    if (next === undefined) break;
    if (last !== undefined && last.inside === inside && last.to === at - 1) segments[segments.length - 1] = { ...last, to: next[0] - 1 };
    else segments.push({ from: at, to: next[0] - 1, inside });
  }
  return segments;
};

const longestOf = (spans: readonly Span[]): number => spans.reduce((most, span) => Math.max(most, span.to - span.from), 0);

/** Index of the first span that could reach `time`: earlier ones began so long before it that they have ended. */
const firstWithin = (spans: readonly Span[], longest: number, time: number): number => {
  let low = 0;
  let high = spans.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((spans[middle]?.from ?? Infinity) < time - longest) low = middle + 1;
    else high = middle;
  }
  return low;
};

/** For each photograph the index of the (first) stop it lies in after the shift; -1 for none. */
const stopsAt = (times: readonly number[], spans: readonly Span[], shiftS: number): readonly number[] => {
  const found: number[] = [];
  const longest = longestOf(spans);
  for (const time of times) {
    const at = time + shiftS;
    let hit = -1;
    for (let index = firstWithin(spans, longest, at); index < spans.length; index += 1) {
      const span = spans[index];
      if (span === undefined || span.from > at) break;
      if (at <= span.to) {
        hit = index;
        break;
      }
    }
    found.push(hit);
  }
  return found;
};

const findRival = (the: {
  readonly segments: readonly Segment[];
  readonly times: readonly number[];
  readonly spans: readonly Span[];
  readonly here: readonly number[];
  readonly floor: number;
}): { shiftS: number; inside: number } | null => {
  const inside = the.times.flatMap((time, index) => ((the.here[index] ?? -1) < 0 ? [] : [time]));
  // Of the photographs the best shift has inside: how many a shift has inside anywhere, and how many in the same stop. Two
  // sweeps, so that a year of photographs is not gone through for each of thousands of shifts.
  const anywhere = countAt(sweep(inside, the.spans));
  const same = countAt(
    segmentsOf(
      the.times.flatMap((time, index) => {
        const stop = the.spans[the.here[index] ?? -1];
        return stop === undefined ? [] : [{ from: stop.from - time, to: stop.to - time }];
      }),
    ),
  );
  // From the best downwards: the first that gives other stops is the strongest rival.
  const candidates = the.segments
    .filter((segment) => segment.inside > the.floor)
    .toSorted((a, b) => b.inside - a.inside || a.from - b.from);
  for (const segment of candidates) {
    const shiftS = middleOf(segment);
    const both = anywhere(shiftS);
    if (both === 0 || both - same(shiftS) > rivalShare * both) return { shiftS, inside: segment.inside };
  }
  return null;
};

/** How many lie inside at a shift, by the runs of shifts in their order. */
const countAt =
  (segments: readonly Segment[]): ((shiftS: number) => number) =>
  (shiftS) => {
    let low = 0;
    let high = segments.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((segments[middle]?.to ?? Infinity) < shiftS) low = middle + 1;
      else high = middle;
    }
    const found = segments[low];
    return found !== undefined && found.from <= shiftS ? found.inside : 0;
  };

/** Photographs that lie, after the shift, between the beginning of a walk and its end: stops more than two hours apart are different walks. */
const countOnWalk = (times: readonly number[], spans: readonly Span[], shiftS: number): number => {
  const walks: Span[] = [];
  for (const span of spans) {
    const last = walks.at(-1);
    if (last !== undefined && span.from <= last.to + 7200) walks[walks.length - 1] = { from: last.from, to: Math.max(last.to, span.to) };
    else walks.push({ from: span.from, to: span.to });
  }
  return stopsAt(
    times,
    walks.map((walk) => ({ from: walk.from - walkRimS, to: walk.to + walkRimS })),
    shiftS,
  ).filter((index) => index >= 0).length;
};
