/**
 * What of a place may be published. A sensitive place is rounded to the middle of a grid cell, never shifted at random:
 * random points are false data, and the mean of many of them gives the place away. Rounded, not cut off: so the point
 * given is the centre of its cell.
 *
 * Source: Chapman, A. D. (2020), Current Best Practices for Generalizing Sensitive Species Occurrence Data, GBIF,
 * doi 10.15468/doc-5jp4-5g10, table 7 and the advice on grids and on stating what was done.
 */
import type { PublicPlaceClass } from "../characters/followed-plant.js";

/** A place as it may be shown to anyone. Nothing finer can be got back from it. */
export type PublicPlace =
  | {
      readonly kind: "point";
      /** Degrees, WGS 84, rounded; `latText`/`lonText` have exactly the decimals that are meant. */
      readonly lat: number;
      readonly lon: number;
      readonly latText: string;
      readonly lonText: string;
      /** Metres: half the diagonal of the cell plus the uncertainty of the original; null = as measured, unknown. */
      readonly uncertaintyM: number | null;
      /** Size of the grid, degrees; null when nothing was generalised. */
      readonly gridDegrees: number | null;
    }
  | { readonly kind: "withheld" }
  /** No coordinates were ever recorded. */
  | { readonly kind: "unknown" };

const grids: Readonly<Record<PublicPlaceClass, number | null>> = {
  "as-measured": null,
  "0.001-degree": 0.001,
  "0.01-degree": 0.01,
  "0.1-degree": 0.1,
  "1-degree": 1,
  withheld: null,
};
const decimalsOf: Readonly<Record<PublicPlaceClass, number>> = {
  "as-measured": 5,
  "0.001-degree": 3,
  "0.01-degree": 2,
  "0.1-degree": 1,
  "1-degree": 0,
  withheld: 0,
};

/** Mean radius of the Earth, metres (IUGG). */
const earthRadiusM = 6_371_008.8;

/**
 * Half the diagonal of a grid cell, metres, on the sphere: the farthest the true place can lie from the centre. Taken at
 * the side of the cell nearer to the equator, where the cell is widest. `gridDegrees` > 0, `lat` -90 to 90.
 */
export const halfDiagonalM = (gridDegrees: number, lat: number): number => {
  const degreeM = (earthRadiusM * Math.PI) / 180;
  const widest = Math.max(0, Math.abs(lat) - gridDegrees / 2);
  const height = gridDegrees * degreeM;
  const width = height * Math.cos((widest * Math.PI) / 180);
  return Math.hypot(height, width) / 2;
};

const rounded = (degrees: number, decimals: number): number => {
  const value = Number(degrees.toFixed(decimals));
  return value === 0 ? 0 : value;
};

/**
 * The public view of a place. @throws {RangeError} when a coordinate lies outside its range.
 * @example
 * publicPlace({ lat: 54.31931, lon: 4.21544, uncertaintyM: 8 }, "0.01-degree") // => { kind: "point", lat: 54.32, lon: 4.22, ... }
 */
export const publicPlace = (
  place: { readonly lat: number | null; readonly lon: number | null; readonly uncertaintyM: number | null },
  publishAs: PublicPlaceClass,
): PublicPlace => {
  const { lat, lon, uncertaintyM } = place;
  if (publishAs === "withheld") return { kind: "withheld" };
  if (lat === null || lon === null) return { kind: "unknown" };
  if (!(Math.abs(lat) <= 90) || !(Math.abs(lon) <= 180)) throw new RangeError(`publicPlace: ${lat}, ${lon} is no place on Earth`);
  const decimals = decimalsOf[publishAs];
  const gridDegrees = grids[publishAs];
  const [publicLat, publicLon] = [rounded(lat, decimals), rounded(lon, decimals)];
  return {
    kind: "point",
    lat: publicLat,
    lon: publicLon,
    latText: publicLat.toFixed(decimals),
    lonText: publicLon.toFixed(decimals),
    uncertaintyM: gridDegrees === null ? uncertaintyM : Math.ceil(halfDiagonalM(gridDegrees, publicLat) + (uncertaintyM ?? 0)),
    gridDegrees,
  };
};

/**
 * Whether a text gives a place away more finely than its class allows: it holds both coordinates with a decimal more
 * than is public, or one of them in full. The last net before anything is published; not a proof of secrecy.
 */
export const givesPlaceAway = (
  text: string,
  place: { readonly lat: number | null; readonly lon: number | null },
  publishAs: PublicPlaceClass,
): boolean => {
  const { lat, lon } = place;
  if (publishAs === "as-measured" || lat === null || lon === null) return false;
  const decimals = decimalsOf[publishAs];
  const holds = (degrees: number, places: number): boolean => {
    const [whole, part = ""] = Math.abs(degrees).toFixed(7).split(".");
    if (Number(part.slice(decimals)) === 0) return false;
    const found = new RegExp(`(?<![\\d.])${whole}[.,]${part.slice(0, places)}`);
    return found.test(text);
  };
  const full = (degrees: number): boolean => {
    const written = String(Math.abs(degrees));
    return (written.split(".")[1] ?? "").length >= Math.max(4, decimals + 1) && text.includes(written);
  };
  return full(lat) || full(lon) || (holds(lat, decimals + 1) && holds(lon, decimals + 1));
};
