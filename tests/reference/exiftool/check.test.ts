import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { publicImage } from "../../../src/media/index.js";
import { readMetadata } from "../../../src/media/read-metadata.js";
import type { PhotoMetadata } from "../../../src/media/index.js";
import { exifTag, smallJpeg, withExif } from "../../support/odd-photos.js";
import { exiftool, hasExiftool, projectFile, sharedFolder } from "./exiftool.js";
import type { ExiftoolTags } from "./exiftool.js";

const { values } = JSON.parse(readFileSync(new URL("./values.json", import.meta.url), "utf8")) as {
  values: { file: string; tags: ExiftoolTags }[];
};
const exifFolder = sharedFolder("images/exif");
const portraits = sharedFolder("images/orientation");

/** Files of which we say null on purpose, with the note that says why. */
const nullTime: Record<string, string> = {
  "04_date_zero.jpg": "time-blank",
  "05_date_blank.jpg": "time-blank",
  "07_date_camera_default.jpg": "clock-not-set",
};
const nullPlace: Record<string, string> = { "10_gps_zero_zero.jpg": "place-zero", "11_gps_missing_ref.jpg": "place-without-hemisphere" };

const isoTime = (text: unknown): { time: string; zone: string | null } | null => {
  const parts = /^(\d{4}):(\d\d):(\d\d) (\d\d:\d\d:\d\d)([+-]\d\d:\d\d|Z)?$/.exec(String(text));
  return parts === null ? null : { time: `${parts[1]}-${parts[2]}-${parts[3]}T${parts[4]}`, zone: parts[5] ?? null };
};

/** One file's metadata against what exiftool said. */
const agrees = (file: string, ours: PhotoMetadata, theirs: ExiftoolTags): void => {
  const taken = isoTime(
    theirs["ExifIFD:DateTimeOriginal"] ?? theirs["XMP-exif:DateTimeOriginal"] ?? theirs["ExifIFD:CreateDate"] ?? theirs["IFD0:ModifyDate"],
  );
  const codes: string[] = ours.notes.map((note) => note.code);
  if (file in nullTime) {
    expect(ours.takenCamera).toBeNull();
    expect(codes).toContain(nullTime[file]);
  } else {
    expect(ours.takenCamera).toBe(taken?.time ?? null);
    expect(ours.takenOffset).toBe(taken === null ? null : (theirs["ExifIFD:OffsetTimeOriginal"] ?? taken.zone ?? null));
  }
  const lat = theirs["Composite:GPSLatitude"];
  const lon = theirs["Composite:GPSLongitude"];
  if (file in nullPlace) {
    expect([ours.lat, ours.lon]).toEqual([null, null]);
    expect(codes).toContain(nullPlace[file]);
  } else if (lat === undefined || lon === undefined) {
    expect([ours.lat, ours.lon]).toEqual([null, null]);
  } else {
    expect(Math.abs(ours.lat! - Number(lat))).toBeLessThanOrEqual(5e-9);
    expect(Math.abs(ours.lon! - Number(lon))).toBeLessThanOrEqual(5e-9);
    const altitude = theirs["Composite:GPSAltitude"];
    if (altitude === undefined) expect(ours.altitudeM).toBeNull();
    else expect(Math.abs(ours.altitudeM! - Number(altitude))).toBeLessThanOrEqual(5e-4);
  }
  const orientation = Number(theirs["IFD0:Orientation"] ?? 1);
  expect(ours.orientation).toBe(orientation >= 1 && orientation <= 8 ? orientation : 1);
  expect(ours.camera).toBe([theirs["IFD0:Make"], theirs["IFD0:Model"]].filter((part) => part !== undefined).join(" "));
};

describe("files with chosen defects, against the stored values of exiftool", () => {
  it.skipIf(exifFolder === null).each(values.filter(({ file }) => file.endsWith(".jpg")))("$file", ({ file, tags }) => {
    agrees(file, readMetadata(readFileSync(join(exifFolder!, file))), tags);
  });

  it("the HEIC file of the project", () => {
    const stored = values.find(({ file }) => file === "gps-north-east.heic")!;
    agrees(stored.file, readMetadata(readFileSync(projectFile("tests/fixtures/photos/gps-north-east.heic"))), stored.tags);
  });

  it.skipIf(exifFolder === null)("the stored values are those that came with the files", () => {
    const expected = JSON.parse(readFileSync(join(exifFolder!, "expected.json"), "utf8")) as ExiftoolTags[];
    let compared = 0;
    for (const { file, tags } of values) {
      const there = expected.find((one) => one["SourceFile"] === file);
      for (const [name, value] of Object.entries(tags)) {
        if (there === undefined || there[name] === undefined) continue;
        expect([file, name, value]).toEqual([file, name, there[name]]);
        compared += 1;
      }
    }
    expect(compared).toBeGreaterThan(80);
  });
});

describe.skipIf(!hasExiftool)("against the installed exiftool", () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "stipule-exiftool-"));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it.skipIf(portraits === null)("the eight portraits", () => {
    const paths = readdirSync(portraits!)
      .filter((name) => name.endsWith(".jpg"))
      .map((name) => join(portraits!, name));
    expect(paths).toHaveLength(8);
    for (const [index, theirs] of exiftool(paths).entries())
      agrees(basename(paths[index]!), readMetadata(readFileSync(paths[index]!)), theirs);
  });

  it("odd files of our own", async () => {
    const plain = await smallJpeg(7);
    const degrees = (d: number, m: number, s: number) => ({
      over: [
        [d, 1],
        [m, 1],
        [Math.round(s * 1000), 1000],
      ] as const,
    });
    const place = (lat: number, latRef: string, lon: number, lonRef: string) => ({
      [exifTag.gpsLatRef]: latRef,
      [exifTag.gpsLat]: degrees(lat, 12, 34.567),
      [exifTag.gpsLonRef]: lonRef,
      [exifTag.gpsLon]: degrees(lon, 59, 59.999),
    });
    const time = { [exifTag.dateTimeOriginal]: "2022:07:27 23:59:59", [exifTag.offsetTimeOriginal]: "+13:00" };
    const odd: Record<string, Buffer> = {
      "nw.jpg": withExif(plain, { exif: time, gps: place(54, "N", 2, "W") }),
      "sw.jpg": withExif(plain, { exif: time, gps: place(33, "S", 70, "W") }),
      "se.jpg": withExif(plain, { exif: time, gps: place(41, "S", 174, "E") }),
      "changed.jpg": withExif(plain, {
        ifd0: { [exifTag.dateTime]: "2021:02:03 04:05:06", [exifTag.make]: "Maker", [exifTag.model]: "X 100" },
      }),
      "digitised.jpg": withExif(plain, { exif: { [exifTag.dateTimeDigitized]: "2020:02:29 04:05:06" } }),
      "turned.jpg": withExif(plain, { ifd0: { [exifTag.orientation]: 8 } }),
      "turned-wrong.jpg": withExif(plain, { ifd0: { [exifTag.orientation]: 77 } }),
      "none.jpg": plain,
    };
    for (const [name, bytes] of Object.entries(odd)) writeFileSync(join(folder, name), bytes);
    // Other containers, tagged by exiftool itself.
    const { execFileSync } = await import("node:child_process");
    for (const [name, bytes] of [
      ["a.png", await sharp(plain).png().toBuffer()],
      ["a.webp", await sharp(plain).webp().toBuffer()],
      ["a.tiff", await sharp(plain).tiff().toBuffer()],
    ] as const) {
      writeFileSync(join(folder, name), bytes);
      const tags = [
        "-DateTimeOriginal=2022:07:27 08:45:00",
        "-OffsetTimeOriginal=+01:00",
        "-GPSLatitude=54.317",
        "-GPSLatitudeRef=N",
        "-GPSLongitude=2.5",
        "-GPSLongitudeRef=W",
        "-Make=Maker",
        "-Model=Z",
      ];
      execFileSync("exiftool", ["-q", "-overwrite_original", ...tags, join(folder, name)], { stdio: "pipe" });
    }
    const names = [...Object.keys(odd), "a.png", "a.webp", "a.tiff"];
    const said = exiftool(names.map((name) => join(folder, name)));
    for (const [index, name] of names.entries()) agrees(name, readMetadata(readFileSync(join(folder, name))), said[index]!);
    expect(readMetadata(readFileSync(join(folder, "a.webp"))).lon).toBe(-2.5);
  });

  it.each(["jpeg", "webp"] as const)("a public copy as %s keeps nothing but pixels, credit and licence", async (format) => {
    const path = join(folder, `original-${format}.jpg`);
    const tagged = withExif(await smallJpeg(9, 400, 300), {
      ifd0: { [exifTag.make]: "Maker", [exifTag.model]: "X", [exifTag.orientation]: 6 },
      exif: { [exifTag.dateTimeOriginal]: "2022:07:27 08:45:00", [exifTag.serial]: "SERIAL-4711" },
      gps: {
        [exifTag.gpsLatRef]: "N",
        [exifTag.gpsLat]: {
          over: [
            [54, 1],
            [0, 1],
            [0, 1],
          ],
        },
        [exifTag.gpsLonRef]: "W",
        [exifTag.gpsLon]: {
          over: [
            [2, 1],
            [0, 1],
            [0, 1],
          ],
        },
      },
    });
    writeFileSync(path, tagged);
    const { execFileSync } = await import("node:child_process");
    execFileSync(
      "exiftool",
      [
        "-q",
        "-overwrite_original",
        "-XMP-dc:Title=secret spot",
        "-IPTC:City=secret town",
        "-XMP-exif:GPSLatitude=54.3",
        "-Comment=secret",
        `-ThumbnailImage<=${path}`,
        path,
      ],
      { stdio: "pipe" },
    );
    expect(JSON.stringify(exiftool([path]))).toMatch(/secret spot.*/);

    const bare = await publicImage(path, { maxPx: 200, format });
    const named = await publicImage(path, { maxPx: 200, format, credit: "T. M. W. <&> Ö", licence: "CC BY 4.0" });
    if (!bare.ok || !named.ok) throw new Error("refused");
    expect([bare.value.widthPx, bare.value.heightPx]).toEqual([150, 200]);
    const paths = [join(folder, `bare.${format}`), join(folder, `named.${format}`)];
    writeFileSync(paths[0]!, bare.value.bytes);
    writeFileSync(paths[1]!, named.value.bytes);
    const groups = (tags: ExiftoolTags): string[] =>
      [...new Set(Object.keys(tags).map((name) => name.split(":")[0]!))].filter(
        (group) => !["SourceFile", "ExifTool", "System", "File", "JFIF", "RIFF", "Composite"].includes(group),
      );
    const [bareTags, namedTags] = exiftool(paths) as [ExiftoolTags, ExiftoolTags];
    expect(groups(bareTags)).toEqual([]);
    expect(groups(namedTags).toSorted()).toEqual(["XMP-dc", "XMP-xmpRights"]);
    expect(namedTags).toMatchObject({
      "XMP-dc:Creator": "T. M. W. <&> Ö",
      "XMP-dc:Rights": "T. M. W. <&> Ö, CC BY 4.0",
      "XMP-xmpRights:UsageTerms": "CC BY 4.0",
    });
    for (const { bytes } of [bare.value, named.value]) {
      const text = Buffer.from(bytes).toString("latin1");
      for (const trace of ["secret", "4711", "Maker", "Exif\0", "2022:07:27"]) expect(text).not.toContain(trace);
    }
  });
});
