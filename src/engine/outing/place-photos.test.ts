import { expect, it } from "vitest";
import { placePhotos } from "./place-photos.js";
import type { Walk } from "./place-photos.js";

const walks = [
  {
    outingId: "O1",
    date: "2024-05-01",
    shiftS: 60,
    stops: [
      { id: "s1", plantId: "P1", from: "2024-05-01T10:00:00", to: "2024-05-01T10:05:00" },
      { id: "s2", plantId: "P2", from: "2024-05-01T10:05:00", to: "2024-05-01T10:10:00" },
      { id: "s3", plantId: "P1", from: "2024-05-01T11:00:00", to: "2024-05-01T11:10:00" },
    ],
  },
  { outingId: "O2", date: "2024-06-01", shiftS: 0, stops: [] },
] as unknown as readonly Walk[];
const place = (taken: string | null) => placePhotos([{ id: "p", taken }] as never, walks)[0]!;

it("places a photograph in the stop its shifted time meets, both ends included", () => {
  expect(place("2024-05-01T09:59:00")).toMatchObject({ sure: true, outingId: "O1", plantId: "P1", stopId: "s1" });
  expect(place("2024-05-01T10:09:00")).toMatchObject({ sure: true, plantId: "P2" });
  expect(place("2024-05-01T09:58:59")).toMatchObject({ sure: false });
});

it("is not sure where two plants share a second, between stops, without outing or time", () => {
  expect(place("2024-05-01T10:04:00")).toMatchObject({ sure: false, why: "several-plants", outingId: "O1" });
  expect(place("2024-05-01T10:29:00")).toMatchObject({
    sure: false,
    why: "between-stops",
    outingId: "O1",
    nearest: { plantId: "P2", secondsAway: 1200 },
  });
  expect(place("2024-06-01T10:00:00")).toMatchObject({ sure: false, why: "between-stops", outingId: "O2", nearest: null });
  expect(place("2024-07-01T10:00:00")).toMatchObject({ sure: false, why: "no-outing", outingId: null });
  expect(place(null)).toMatchObject({ sure: false, why: "no-time", outingId: null });
});
