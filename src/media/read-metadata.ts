/**
 * What a photograph's metadata say about time, place, camera and orientation, read by exifreader. What is missing or
 * impossible becomes null with a note that says why; nothing is guessed. Serial numbers, names of people and maker notes
 * are not read out. Tags and their meanings: CIPA DC-008-2023 (Exif 3.0); XMP properties: ISO 16684-1 and CIPA DC-010.
 */
import ExifReader from "exifreader";
import { localTime, utcOffset } from "../engine/index.js";
import type { LocalTime } from "../engine/index.js";

/** One thing odd in the metadata. `code` is stable and tested; the sentence is said by the catalogue: `photo.note.<code>`. */
export interface MetadataNote {
  readonly code:
    | "no-metadata"
    | "metadata-unreadable"
    | "no-time"
    | "time-blank"
    | "time-impossible"
    | "clock-not-set"
    | "times-disagree"
    | "offset-impossible"
    | "place-without-hemisphere"
    | "place-zero"
    | "place-impossible"
    | "orientation-invalid";
  readonly values: Readonly<Record<string, string | number>>;
}

export interface PhotoMetadata {
  /** By the camera's clock. */
  readonly takenCamera: LocalTime | null;
  /** Offset from UTC of that time, where the camera wrote it: `+01:00`. */
  readonly takenOffset: string | null;
  /** WGS 84, decimal degrees, north and east positive. */
  readonly lat: number | null;
  readonly lon: number | null;
  /** Metres above sea level, below negative. */
  readonly altitudeM: number | null;
  /** 1-8; 1 when missing or invalid. */
  readonly orientation: number;
  /** Maker and model, at most 120 characters; empty when unknown. */
  readonly camera: string;
  readonly notes: readonly MetadataNote[];
}

type Tags = Readonly<Record<string, { readonly value?: unknown } | undefined>>;

/**
 * @param bytes - The whole file, or as much of its beginning as holds the metadata.
 * @returns Always an answer: unreadable metadata give nulls and a note. Never throws.
 */
export const readMetadata = (bytes: Uint8Array): PhotoMetadata => {
  const notes: MetadataNote[] = [];
  const { exif, xmp } = load(bytes, notes);
  const time = readTime(exif, xmp, notes);
  const place = readPlace(exif, xmp, notes);
  return { ...time, ...place, orientation: readOrientation(exif, notes), camera: readCamera(exif, xmp), notes };
};

const load = (bytes: Uint8Array, notes: MetadataNote[]): { exif: Tags; xmp: Tags } => {
  try {
    const view = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const tags = ExifReader.load(view, { expanded: true }) as unknown as { exif?: Tags; xmp?: Tags };
    const exif = tags.exif ?? {};
    const xmp = tags.xmp ?? {};
    if (Object.keys(exif).length === 0 && Object.keys(xmp).length === 0) notes.push({ code: "no-metadata", values: {} });
    return { exif, xmp };
  } catch (error) {
    const none = error instanceof ExifReader.errors.MetadataMissingError;
    notes.push(none ? { code: "no-metadata", values: {} } : { code: "metadata-unreadable", values: {} });
    return { exif: {}, xmp: {} };
  }
};

/** The text of a tag; exifreader gives EXIF text as an array with one string, XMP text as a string. */
const textOf = (tags: Tags, name: string): string | null => {
  const value = tags[name]?.value;
  const text: unknown = Array.isArray(value) ? value[0] : value;
  // Exif text ends at the first NUL.
  return typeof text === "string" ? (text.split("\0")[0] ?? "") : null;
};

// Time

type TimeReading =
  | { readonly kind: "time"; readonly time: LocalTime; readonly zone: string | null }
  | { readonly kind: "blank" | "impossible" | "not-set"; readonly text: string };

/** In the order in which they are believed, each with the tag of its offset. */
const timeTags = [
  { name: "DateTimeOriginal", offset: "OffsetTimeOriginal", said: "taken" },
  { name: "DateTimeDigitized", offset: "OffsetTimeDigitized", said: "digitised" },
  { name: "DateTime", offset: "OffsetTime", said: "changed" },
] as const;
const xmpTimeTags = [
  { name: "DateTimeOriginal", said: "taken" },
  { name: "DateCreated", said: "taken" },
  { name: "CreateDate", said: "digitised" },
] as const;

const readTime = (exif: Tags, xmp: Tags, notes: MetadataNote[]): { takenCamera: LocalTime | null; takenOffset: string | null } => {
  const readings = [
    ...timeTags.map((tag) => ({ said: tag.said, text: textOf(exif, tag.name), offset: textOf(exif, tag.offset) })),
    ...xmpTimeTags.map((tag) => ({ said: tag.said, text: textOf(xmp, tag.name), offset: null })),
  ].flatMap(({ said, text, offset }) => (text === null ? [] : [{ said, offset, reading: parseTime(text) }]));

  for (const { said, reading } of readings) {
    if (reading.kind === "blank") notes.push({ code: "time-blank", values: { which: said } });
    if (reading.kind === "impossible") notes.push({ code: "time-impossible", values: { which: said, time: reading.text } });
    if (reading.kind === "not-set") {
      notes.push({ code: "clock-not-set", values: { which: said, time: reading.text } });
    }
  }
  const good = readings.flatMap(({ said, offset, reading }) =>
    reading.kind === "time" ? [{ said, offset, time: reading.time, zone: reading.zone }] : [],
  );
  const first = good[0];
  if (first === undefined) {
    if (readings.length === 0 && notes.length === 0) notes.push({ code: "no-time", values: {} });
    return { takenCamera: null, takenOffset: null };
  }
  const other = good.find((reading) => reading.time !== first.time);
  if (other !== undefined) {
    notes.push({
      code: "times-disagree",
      values: { which: first.said, time: plain(first.time), other: other.said, otherTime: plain(other.time) },
    });
  }
  // Without an offset of its own, a time takes that of an equal time beside it.
  const offsets = good.filter((reading) => reading.time === first.time).map((reading) => reading.offset ?? reading.zone);
  const written = offsets.map((text) => text?.trim() ?? "").find((text) => /[^\s:]/.test(text));
  const offset = utcOffset.safeParse(written);
  if (offset.success) return { takenCamera: first.time, takenOffset: offset.data };
  if (written !== undefined) notes.push({ code: "offset-impossible", values: { offset: written.slice(0, 20) } });
  return { takenCamera: first.time, takenOffset: null };
};

const plain = (time: LocalTime): string => time.replace("T", " ");

/** "2024:05:11 09:30:15" of Exif, "2024-05-11T09:30:15.12+02:00" of XMP. */
const parseTime = (raw: string): TimeReading => {
  const text = raw.trim();
  if (/^[\s:0TZ.+-]*$/.test(text)) return { kind: "blank", text };
  const parts = /^(\d{4})[:-](\d{2})[:-](\d{2})[ T](\d{2}):(\d{2})(?::(\d{2}))?(?:\.\d+)?\s*(Z|[+-]\d{2}:\d{2})?$/.exec(text);
  const shown = text.replaceAll(/[^\x20-\x7e]/g, "?").slice(0, 40);
  if (parts === null) return { kind: "impossible", text: shown };
  const [, year, month, day, hour, minute, second = "00", zone] = parts;
  const parsed = localTime.safeParse(`${year}-${month}-${day}T${hour}:${minute}:${second}`);
  if (!parsed.success) return { kind: "impossible", text: shown };
  // A camera whose battery ran out starts again on 1 January of some year at midnight (common practice, no source);
  // before 1990 no camera wrote Exif (the first version of the standard is of 1995).
  if (parsed.data.slice(5, 14) === "01-01T00:" || Number(year) < 1990) return { kind: "not-set", text: plain(parsed.data) };
  return { kind: "time", time: parsed.data, zone: zone ?? null };
};

// Place

const readPlace = (exif: Tags, xmp: Tags, notes: MetadataNote[]): { lat: number | null; lon: number | null; altitudeM: number | null } => {
  const nowhere = { lat: null, lon: null, altitudeM: null };
  const has = exif["GPSLatitude"] !== undefined || exif["GPSLongitude"] !== undefined;
  const lat = has ? exifDegrees(exif, "GPSLatitude") : xmpDegrees(textOf(xmp, "GPSLatitude"));
  const lon = has ? exifDegrees(exif, "GPSLongitude") : xmpDegrees(textOf(xmp, "GPSLongitude"));
  if (lat === null && lon === null) return nowhere;
  if (lat === null || lon === null || !(Math.abs(lat.degrees) <= 90) || !(Math.abs(lon.degrees) <= 180)) {
    notes.push({ code: "place-impossible", values: {} });
    return nowhere;
  }
  if (!/^[NS]$/.test(lat.ref) || !/^[EW]$/.test(lon.ref)) {
    notes.push({ code: "place-without-hemisphere", values: {} });
    return nowhere;
  }
  if (lat.degrees === 0 && lon.degrees === 0) {
    notes.push({ code: "place-zero", values: {} });
    return nowhere;
  }
  return {
    lat: signed(lat.degrees, lat.ref === "S"),
    lon: signed(lon.degrees, lon.ref === "W"),
    altitudeM: has ? exifAltitude(exif) : xmpAltitude(xmp),
  };
};

/** Rounded to 1e-8 degrees, a millimetre, so that no digits of the arithmetic are kept as if measured. */
const signed = (degrees: number, negative: boolean): number => (negative ? -1 : 1) * (Math.round(degrees * 1e8) / 1e8);

interface Degrees {
  readonly degrees: number;
  readonly ref: string;
}

const rational = (value: unknown): number => {
  const [numerator, denominator] = Array.isArray(value) ? (value as readonly unknown[]) : [];
  return typeof numerator === "number" && typeof denominator === "number" ? numerator / denominator : Number.NaN;
};

const exifDegrees = (exif: Tags, name: "GPSLatitude" | "GPSLongitude"): Degrees | null => {
  const value = exif[name]?.value;
  if (!Array.isArray(value)) return null;
  const [degrees = Number.NaN, minutes = 0, seconds = 0] = value.map(rational);
  return { degrees: degrees + minutes / 60 + seconds / 3600, ref: (textOf(exif, `${name}Ref`) ?? "").trim().toUpperCase().slice(0, 1) };
};

/** "47,33.733N" or "47,33,44N" (XMP's GPSCoordinate). */
const xmpDegrees = (text: string | null): Degrees | null => {
  if (text === null) return null;
  const parts = /^(\d{1,3}),(\d{1,2}(?:\.\d+)?)(?:,(\d{1,2}(?:\.\d+)?))?([NSEW])?$/.exec(text.trim());
  if (parts === null) return { degrees: Number.NaN, ref: "" };
  return { degrees: Number(parts[1]) + Number(parts[2]) / 60 + Number(parts[3] ?? 0) / 3600, ref: parts[4] ?? "" };
};

const exifAltitude = (exif: Tags): number | null => {
  const metres = rational(exif["GPSAltitude"]?.value);
  if (!Number.isFinite(metres)) return null;
  const ref: unknown = exif["GPSAltitudeRef"]?.value;
  const below = ref === 1 || (Array.isArray(ref) && ref[0] === 1);
  return below ? 0 - metres : metres;
};

const xmpAltitude = (xmp: Tags): number | null => {
  const parts = /^(\d+)(?:\/(\d+))?$/.exec(textOf(xmp, "GPSAltitude")?.trim() ?? "");
  if (parts === null) return null;
  const metres = Number(parts[1]) / Number(parts[2] ?? 1);
  if (!Number.isFinite(metres)) return null;
  return textOf(xmp, "GPSAltitudeRef") === "1" ? 0 - metres : metres;
};

// Orientation and camera

const readOrientation = (exif: Tags, notes: MetadataNote[]): number => {
  const raw: unknown = exif["Orientation"]?.value;
  if (raw === undefined) return 1;
  const value: unknown = Array.isArray(raw) ? raw[0] : raw;
  if (typeof value === "number" && Number.isInteger(value) && value >= 1 && value <= 8) return value;
  notes.push({ code: "orientation-invalid", values: { orientation: String(value).slice(0, 20) } });
  return 1;
};

const readCamera = (exif: Tags, xmp: Tags): string => {
  const clean = (text: string | null): string =>
    (text ?? "")
      .replaceAll(/[\p{Cc}\p{Cf}]/gu, "")
      .replaceAll(/\s+/g, " ")
      .trim();
  const make = clean(textOf(exif, "Make") ?? textOf(xmp, "Make"));
  const model = clean(textOf(exif, "Model") ?? textOf(xmp, "Model"));
  const both = model.toLowerCase().startsWith(make.toLowerCase()) ? model : `${make} ${model}`.trim();
  return both.slice(0, 120).trim();
};
