/**
 * From a file's bytes to pixels, with every limit checked before a pixel is decoded. HEIC is decoded by heic-decode,
 * since sharp's own build reads its header but not its pixels; everything else by sharp.
 */
import sharp from "sharp";
import type { Sharp, SharpOptions } from "sharp";
import { fail, ok } from "../engine/index.js";
import type { Result } from "../engine/index.js";
import { maxFileBytes, maxPixels, maxSidePx } from "./photo-refusal.js";
import type { PhotoRefusal } from "./photo-refusal.js";
import { formatName, sniff, sniffBytes } from "./sniff.js";
import type { PhotoFormat } from "./sniff.js";

// One thread an image: the pool of workers is the parallelism. No cache: every photograph is read once.
sharp.concurrency(1);
sharp.cache(false);

/** A file whose header is sound; `open` decodes it anew at each call. */
export interface Picture {
  readonly format: PhotoFormat;
  /** As displayed, after orientation. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** What was applied, 1-8; always 1 for HEIC, whose file format turns the picture itself. */
  readonly orientation: number;
  /** More than one: only the first is decoded. */
  readonly pageCount: number;
  /** Upright sRGB pixels without alpha, still to be resized and encoded. Throws what the decoder throws: see {@link refusalOf}. */
  readonly open: () => Promise<Sharp>;
}

const options: SharpOptions = { failOn: "error", limitInputPixels: maxPixels, pages: 1, sequentialRead: true };

/** Reads the header and refuses what is no photograph, not whole at its beginning, or too large. */
export const readHeader = async (bytes: Uint8Array): Promise<Result<Picture, PhotoRefusal>> => {
  const sniffed = sniff(bytes.subarray(0, sniffBytes));
  if (sniffed.kind === "empty") return fail({ code: "empty", values: {} });
  if (sniffed.kind === "other") return fail({ code: "not-a-photograph", values: { found: sniffed.found } });
  if (sniffed.kind === "other-picture") return fail({ code: "format-not-read", values: { found: sniffed.found } });
  if (bytes.length > maxFileBytes) return fail(tooManyBytes(bytes.length));
  const format = sniffed.format;
  let header;
  try {
    header = await sharp(bytes, { failOn: "none", limitInputPixels: false }).metadata();
  } catch (error) {
    return fail(endsEarly(bytes, format) ? { code: "cut-short", values: { format: formatName[format] } } : refusalOf(error, format));
  }
  const pageCount = Math.max(1, header.pages ?? 1);
  const pixels = header.width * (header.pageHeight ?? header.height) * (format === "heic" ? 1 : pageCount);
  if (!(pixels > 0)) return fail({ code: "damaged", values: { format: formatName[format] } });
  if (pixels > maxPixels || Math.max(header.width, header.pageHeight ?? header.height) > maxSidePx) {
    return fail(tooManyPixels(header.width, header.pageHeight ?? header.height, pageCount));
  }
  if (format === "heic")
    return ok({ format, widthPx: header.width, heightPx: header.height, orientation: 1, pageCount, open: () => openHeic(bytes) });
  const orientation = header.orientation !== undefined && header.orientation >= 1 && header.orientation <= 8 ? header.orientation : 1;
  const upright = orientation < 5;
  const height = header.pageHeight ?? header.height;
  return ok({
    format,
    widthPx: upright ? header.width : height,
    heightPx: upright ? height : header.width,
    orientation,
    pageCount,
    open: async () => await Promise.resolve(plain(sharp(bytes, options).autoOrient())),
  });
};

/** Says a file is larger than is taken in. */
export const tooManyBytes = (bytes: number): PhotoRefusal => ({
  code: "too-many-bytes",
  values: { megabytes: Math.round(bytes / 1024 / 1024), most: maxFileBytes / 1024 / 1024 },
});

/** What a decoder's error means for the file. */
export const refusalOf = (error: unknown, format: PhotoFormat): PhotoRefusal => {
  const said = error instanceof Error ? error.message : String(error);
  const cut =
    /premature|truncat|end of (file|stream|image|data)|unexpected end|not enough|out of order|short read|IDAT|read error|Cannot read fields/i;
  return { code: cut.test(said) ? "cut-short" : "damaged", values: { format: formatName[format] } };
};

const tooManyPixels = (width: number, height: number, pages: number): PhotoRefusal => ({
  code: "too-many-pixels",
  values: { width: String(width), height: String(height), pages, megapixels: Math.floor(maxPixels / 1e6), side: String(maxSidePx) },
});

/** A WebP file says its length at byte 4 (RFC 9649, section 2.4), less the eight bytes before. */
const endsEarly = (bytes: Uint8Array, format: PhotoFormat): boolean =>
  format === "webp" && bytes.length >= 8 && new DataView(bytes.buffer, bytes.byteOffset).getUint32(4, true) + 8 > bytes.length;

/** White behind what is transparent; sRGB whatever profile the file carries. */
const plain = (image: Sharp): Sharp => image.flatten({ background: "#ffffff" }).toColourspace("srgb");

const openHeic = async (bytes: Uint8Array): Promise<Sharp> => {
  // Compiling the decoder takes longer than starting everything else; most files are no HEIC.
  const { default: decodeHeic } = await import("heic-decode");
  const { width, height, data } = await decodeHeic({ buffer: bytes });
  return plain(sharp(data, { raw: { width, height, channels: 4 }, limitInputPixels: maxPixels }));
};
