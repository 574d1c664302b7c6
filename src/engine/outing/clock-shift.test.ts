import { describe, expect, it } from "vitest";
import { shiftTime } from "../base/dates.js";
import type { LocalTime } from "../base/dates.js";
import { clockShift, countInside } from "./clock-shift.js";

describe("clockShift when it should keep silent", () => {
  const at = (clock: string): LocalTime => `2024-05-01T${clock}` as LocalTime;
  const walk = [0, 1, 2, 3].map((k) => ({ from: at(`10:${k}0:00`), to: at(`10:${k}6:00`) }));

  it("says nothing without photographs, stops, or enough of either", () => {
    expect(clockShift([], walk)).toMatchObject({ proposedS: null, doubt: "too-few-photographs", insideAfter: 0, equallyGood: null });
    expect(clockShift([at("10:01:00")], walk).doubt).toBe("too-few-photographs");
    const six = [1, 2, 3, 4, 5, 6].map((m) => at(`10:0${m}:00`));
    expect(clockShift(six, []).doubt).toBe("too-few-stops");
    expect(clockShift(six, walk.slice(0, 1)).doubt).toBe("too-few-stops");
  });

  it("says nothing when equal stops at equal distances fit at several shifts", () => {
    const found = clockShift(
      [1, 2].flatMap((k) => [at(`10:${k}1:00`), at(`10:${k}3:00`), at(`10:${k}5:00`)]),
      walk,
    );
    expect(found).toMatchObject({ proposedS: null, doubt: "several-shifts-fit" });
    expect(found.rival!.inside).toBe(6);
  });

  it("says nothing when photographs are spread evenly over the walk", () => {
    const even = Array.from({ length: 40 }, (_, k) => shiftTime(at("10:00:00"), k * 60));
    expect(clockShift(even, walk).proposedS).toBeNull();
  });

  it("proposes no change when the clock is right", () => {
    const uneven = [
      { from: at("10:00:00"), to: at("10:04:00") },
      { from: at("10:15:00"), to: at("10:16:00") },
      { from: at("10:40:00"), to: at("10:52:00") },
    ];
    const photos = ["10:00:30", "10:03:30", "10:15:30", "10:15:50", "10:41:00", "10:45:00", "10:51:00"].map(at);
    expect(clockShift(photos, uneven)).toMatchObject({ proposedS: 0, doubt: null, insideBefore: 7, insideAfter: 7 });
  });

  it("counts both ends of a stop, and overlapping stops once", () => {
    const overlapping = [
      { from: at("10:00:00"), to: at("10:05:00") },
      { from: at("10:04:00"), to: at("10:09:00") },
    ];
    expect(countInside([at("10:00:00"), at("10:04:30"), at("10:09:00"), at("10:09:01")], overlapping, 0)).toBe(3);
    expect(clockShift([at("10:04:30")], overlapping).insideAfter).toBe(1);
  });
});

describe("clockShift on one outing alone", () => {
  /** Small seeded generator (mulberry32, public domain). */
  const random = (seed: number) => {
    let state = seed;
    return (): number => {
      state = (state + 0x6d2b79f5) >>> 0;
      let t = Math.imul(state ^ (state >>> 15), state | 1);
      t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
      return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
    };
  };
  const zero = "2024-05-01T00:00:00" as LocalTime;
  /** A walk of six stops with a few irregular photographs at each and, now and then, one on the way. */
  const walkOf = (seed: number) => {
    const next = random(seed);
    const truth = Math.round((next() - 0.5) * 7200);
    const walk: { from: LocalTime; to: LocalTime }[] = [];
    const photos: LocalTime[] = [];
    const stopOf: number[] = [];
    let t = 36_000;
    for (let index = 0; index < 6; index += 1) {
      const length = 180 + next() * 900;
      walk.push({ from: shiftTime(zero, t), to: shiftTime(zero, t + length) });
      const count = 1 + Math.floor(next() * 9);
      for (let k = 0; k < count; k += 1) {
        photos.push(shiftTime(zero, t + 15 + next() * (length - 20) - truth));
        stopOf.push(index);
      }
      t += length + 60 + next() * 400;
    }
    if (next() < 0.3) {
      photos.push(shiftTime(zero, t - 30 - truth));
      stopOf.push(-1);
    }
    return { walk, photos, stopOf };
  };

  it("proposes for most walks, and what it proposes is right", () => {
    let proposed = 0;
    let wrong = 0;
    for (let seed = 1; seed <= 100; seed += 1) {
      const { walk, photos, stopOf } = walkOf(seed);
      const { proposedS } = clockShift(photos, walk);
      if (proposedS === null) continue;
      proposed += 1;
      const at = photos.map((photo) => shiftTime(photo, proposedS));
      const right = at.filter((time, k) => stopOf[k]! >= 0 && walk[stopOf[k]!]!.from <= time && time <= walk[stopOf[k]!]!.to).length;
      if (right < 0.95 * stopOf.filter((stop) => stop >= 0).length) wrong += 1;
    }
    expect(proposed).toBeGreaterThanOrEqual(85);
    expect(wrong).toBeLessThanOrEqual(1);
  });
});
