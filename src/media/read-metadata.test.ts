import { beforeAll, describe, expect, it } from "vitest";
import { exifTag, smallJpeg, withExif } from "../../tests/support/odd-photos.js";
import { readMetadata } from "./read-metadata.js";
import type { PhotoMetadata } from "./read-metadata.js";

let plain: Buffer;
beforeAll(async () => {
  plain = await smallJpeg(1);
});
const read = (tags: Parameters<typeof withExif>[1]): PhotoMetadata => readMetadata(withExif(plain, tags));
const codes = (metadata: PhotoMetadata): string[] => metadata.notes.map((note) => note.code);
type Degrees = { readonly over: readonly (readonly [number, number])[] };
const dms = (d: number, m: number, s: number): Degrees => ({
  over: [
    [d, 1],
    [m, 1],
    [s * 100, 100],
  ] as const,
});

describe("the time taken", () => {
  it("is the original's, then the digitised, then the changed", () => {
    const times = { ifd0: { [exifTag.dateTime]: "2022:07:29 10:00:00" } };
    expect(read(times).takenCamera).toBe("2022-07-29T10:00:00");
    expect(read({ ...times, exif: { [exifTag.dateTimeDigitized]: "2022:07:28 10:00:00" } }).takenCamera).toBe("2022-07-28T10:00:00");
    const all = read({
      ...times,
      exif: { [exifTag.dateTimeOriginal]: "2022:07:27 10:00:00", [exifTag.dateTimeDigitized]: "2022:07:27 10:00:00" },
    });
    expect(all.takenCamera).toBe("2022-07-27T10:00:00");
    expect(all.notes).toEqual([
      {
        code: "times-disagree",
        values: { which: "taken", time: "2022-07-27 10:00:00", other: "changed", otherTime: "2022-07-29 10:00:00" },
      },
    ]);
  });

  it.each([
    ["0000:00:00 00:00:00", "time-blank"],
    ["    :  :     :  :  ", "time-blank"],
    ["2022:02:30 10:00:00", "time-impossible"],
    ["2022:13:01 10:00:00", "time-impossible"],
    ["2022:07:27 25:00:00", "time-impossible"],
    ["last summer", "time-impossible"],
    ["2000:01:01 00:00:12", "clock-not-set"],
    ["2015:01:01 00:04:00", "clock-not-set"],
    ["1970:06:01 12:00:00", "clock-not-set"],
  ])("is null for %j, with a note %s", (text, code) => {
    const found = read({ exif: { [exifTag.dateTimeOriginal]: text } });
    expect(found.takenCamera).toBeNull();
    expect(codes(found)).toEqual([code]);
  });

  it("falls back from a blank time to a good one, and says so", () => {
    const found = read({ exif: { [exifTag.dateTimeOriginal]: "0000:00:00 00:00:00", [exifTag.dateTimeDigitized]: "2022:07:28 10:00:00" } });
    expect(found.takenCamera).toBe("2022-07-28T10:00:00");
    expect(codes(found)).toEqual(["time-blank"]);
  });

  it("brings its own offset, or that of an equal time, and no impossible one", () => {
    const time = "2022:07:27 10:00:00";
    expect(read({ exif: { [exifTag.dateTimeOriginal]: time, [exifTag.offsetTimeOriginal]: "+05:45" } }).takenOffset).toBe("+05:45");
    const beside = { ifd0: { [exifTag.dateTime]: time }, exif: { [exifTag.dateTimeOriginal]: time, [exifTag.offsetTime]: "-03:30" } };
    expect(read(beside).takenOffset).toBe("-03:30");
    const other = { ...beside, ifd0: { [exifTag.dateTime]: "2022:08:27 10:00:00" } };
    expect(read(other).takenOffset).toBeNull();
    const wrong = read({ exif: { [exifTag.dateTimeOriginal]: time, [exifTag.offsetTimeOriginal]: "+25:00" } });
    expect([wrong.takenOffset, codes(wrong)]).toEqual([null, ["offset-impossible"]]);
    expect(codes(read({ exif: { [exifTag.dateTimeOriginal]: time, [exifTag.offsetTimeOriginal]: "   :  " } }))).toEqual([]);
  });
});

describe("the place", () => {
  const time = { exif: { [exifTag.dateTimeOriginal]: "2022:07:27 10:00:00" } };
  const place = (lat: Degrees, latRef: string, lon: Degrees, lonRef: string): PhotoMetadata =>
    read({
      ...time,
      gps: { [exifTag.gpsLatRef]: latRef, [exifTag.gpsLat]: lat, [exifTag.gpsLonRef]: lonRef, [exifTag.gpsLon]: lon },
    });

  it("has the sign of its hemisphere", () => {
    expect(place(dms(54, 30, 0), "N", dms(2, 15, 0), "W")).toMatchObject({ lat: 54.5, lon: -2.25, notes: [] });
    expect(place(dms(33, 0, 36), "S", dms(151, 12, 0), "E")).toMatchObject({ lat: -33.01, lon: 151.2, notes: [] });
  });

  it.each([
    ["0, 0", dms(0, 0, 0), "N", dms(0, 0, 0), "E", "place-zero"],
    ["no hemisphere", dms(54, 0, 0), "", dms(2, 0, 0), "W", "place-without-hemisphere"],
    ["latitude above 90", dms(91, 0, 0), "N", dms(2, 0, 0), "W", "place-impossible"],
    [
      "no number",
      {
        over: [
          [0, 0],
          [0, 0],
          [0, 0],
        ] as const,
      },
      "N",
      dms(2, 0, 0),
      "W",
      "place-impossible",
    ],
  ] as const)("is null for %s", (_, lat, latRef, lon, lonRef, code) => {
    const found = place(lat, latRef, lon, lonRef);
    expect([found.lat, found.lon, found.altitudeM, codes(found)]).toEqual([null, null, null, [code]]);
  });
});

describe("orientation and camera", () => {
  it("keeps 1 to 8 and takes anything else as 1, with a note", () => {
    for (let value = 1; value <= 8; value += 1) expect(read({ ifd0: { [exifTag.orientation]: value } }).orientation).toBe(value);
    for (const value of [0, 9, 65_535]) {
      const found = read({ ifd0: { [exifTag.orientation]: value } });
      expect([found.orientation, codes(found)]).toEqual([1, ["no-time", "orientation-invalid"]]);
    }
  });

  it("names the camera once, without control characters, and no serial number", () => {
    const found = read({ ifd0: { [exifTag.make]: "Maker", [exifTag.model]: "Maker X\u0007 100" }, exif: { [exifTag.serial]: "SN-4711" } });
    expect(found.camera).toBe("Maker X 100");
    expect(JSON.stringify(found)).not.toContain("4711");
    expect(read({ ifd0: { [exifTag.make]: "Maker", [exifTag.model]: "X 100" } }).camera).toBe("Maker X 100");
  });
});

describe("damaged metadata", () => {
  it("give nulls and a note, whatever byte is wrong", () => {
    const good = withExif(plain, {
      ifd0: { [exifTag.make]: "Maker", [exifTag.orientation]: 6 },
      exif: { [exifTag.dateTimeOriginal]: "2022:07:27 10:00:00" },
      gps: { [exifTag.gpsLatRef]: "N", [exifTag.gpsLat]: dms(54, 0, 0), [exifTag.gpsLonRef]: "E", [exifTag.gpsLon]: dms(1, 0, 0) },
    });
    for (let at = 2; at < 260; at += 1) {
      for (const byte of [0x00, 0xff, 0x08, 0x69]) {
        const bad = Buffer.from(good);
        bad[at] = byte;
        const found = readMetadata(bad);
        expect(found.orientation).toBeGreaterThanOrEqual(1);
        expect(found.lat === null || Math.abs(found.lat) <= 90).toBe(true);
      }
    }
    for (let end = 0; end < 260; end += 7) expect(readMetadata(good.subarray(0, end)).orientation).toBeGreaterThanOrEqual(1);
  });

  it("say which: none, or unreadable", () => {
    expect(codes(readMetadata(plain))).toEqual(["no-metadata"]);
    expect(codes(readMetadata(Buffer.from("no picture at all")))).toEqual(["metadata-unreadable"]);
    expect(codes(readMetadata(new Uint8Array()))).toEqual(["metadata-unreadable"]);
  });
});
