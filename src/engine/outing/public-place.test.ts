import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { givesPlaceAway, halfDiagonalM, publicPlace } from "./public-place.js";

const fen = { lat: 54.31931, lon: 4.21544, uncertaintyM: 8 };

describe("publicPlace", () => {
  it("rounds to the middle of the cell and adds half its diagonal to the uncertainty", () => {
    const place = publicPlace(fen, "0.01-degree");
    expect(place).toMatchObject({ kind: "point", lat: 54.32, lon: 4.22, latText: "54.32", lonText: "4.22", gridDegrees: 0.01 });
    // 1.112 km by 0.649 km: half diagonal 644 m, and 8 m of the original.
    expect(place.kind === "point" && place.uncertaintyM).toBe(652);
  });

  it("knows the classes", () => {
    expect(publicPlace(fen, "1-degree")).toMatchObject({ latText: "54", lonText: "4" });
    expect(publicPlace(fen, "0.1-degree")).toMatchObject({ latText: "54.3", lonText: "4.2" });
    expect(publicPlace(fen, "0.001-degree")).toMatchObject({ latText: "54.319", lonText: "4.215" });
    expect(publicPlace(fen, "as-measured")).toMatchObject({ latText: "54.31931", lonText: "4.21544", gridDegrees: null, uncertaintyM: 8 });
    expect(publicPlace(fen, "withheld")).toEqual({ kind: "withheld" });
    expect(publicPlace({ lat: null, lon: null, uncertaintyM: null }, "0.01-degree")).toEqual({ kind: "unknown" });
    expect(publicPlace({ lat: -0.001, lon: -0.004, uncertaintyM: null }, "0.01-degree")).toMatchObject({
      latText: "0.00",
      lonText: "0.00",
    });
    expect(() => publicPlace({ lat: 91, lon: 0, uncertaintyM: null }, "1-degree")).toThrow(RangeError);
  });

  it("gives half diagonals of 7.9 km at the equator, 6.8 km at 45 N, 6.2 km at 60 N for a tenth of a degree", () => {
    expect([0, 45, 60].map((lat) => Math.round(halfDiagonalM(0.1, lat) / 100) / 10)).toEqual([7.9, 6.8, 6.2]);
  });

  it("never lies farther off than it says (great circle), and is the same for the whole cell", () => {
    const radians = (d: number): number => (d * Math.PI) / 180;
    const metres = (a: { lat: number; lon: number }, b: { lat: number; lon: number }): number => {
      const h =
        Math.sin(radians(a.lat - b.lat) / 2) ** 2 +
        Math.cos(radians(a.lat)) * Math.cos(radians(b.lat)) * Math.sin(radians(a.lon - b.lon) / 2) ** 2;
      return 2 * 6_371_008.8 * Math.asin(Math.sqrt(h));
    };
    fc.assert(
      fc.property(
        fc.double({ min: -85, max: 85, noNaN: true }),
        fc.double({ min: -179, max: 179, noNaN: true }),
        fc.constantFrom("0.001-degree", "0.01-degree", "0.1-degree") as fc.Arbitrary<"0.1-degree">,
        (lat, lon, publishAs) => {
          const place = publicPlace({ lat, lon, uncertaintyM: 3 }, publishAs);
          if (place.kind !== "point" || place.uncertaintyM === null) throw new Error("a point was expected");
          expect(metres({ lat, lon }, place)).toBeLessThanOrEqual(place.uncertaintyM - 2);
          expect(publicPlace({ lat: place.lat, lon: place.lon, uncertaintyM: 3 }, publishAs)).toEqual(place);
        },
      ),
    );
  });
});

describe("givesPlaceAway", () => {
  it("finds the fine place in any text, and lets the coarse one through", () => {
    expect(givesPlaceAway("at 54.31931 N", fen, "0.01-degree")).toBe(true);
    expect(givesPlaceAway("54.3193, 4.2154", fen, "0.01-degree")).toBe(true);
    expect(givesPlaceAway("54,319 / 4,215", fen, "0.01-degree")).toBe(true);
    expect(givesPlaceAway("54.32, 4.22", fen, "0.01-degree")).toBe(false);
    expect(givesPlaceAway("capsule 4.21 mm", fen, "0.1-degree")).toBe(false);
    expect(givesPlaceAway("54.32, 4.22", fen, "withheld")).toBe(true);
    expect(givesPlaceAway("54.31931, 4.21544", fen, "as-measured")).toBe(false);
  });
});
