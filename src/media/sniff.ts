/**
 * The format of a file by its first bytes, never by its name. The signatures are those of the formats' own standards:
 * JPEG (ITU-T T.81, SOI marker), PNG (W3C PNG 3rd ed., 5.2), TIFF 6.0 (section 2), WebP (RFC 9649), HEIF (ISO/IEC
 * 23008-12, brands in the `ftyp` box of ISO/IEC 14496-12).
 */
import type { Photo } from "../engine/index.js";

export type PhotoFormat = Photo["format"];

/** What a file is, by its content. */
export type Sniffed =
  | { readonly kind: "photo"; readonly format: PhotoFormat }
  /** A picture that is not read here. */
  | { readonly kind: "other-picture"; readonly found: "raw" | "gif" | "bmp" | "avif" | "jxl" }
  | { readonly kind: "other"; readonly found: "text" | "svg" | "film" | "pdf" | "zip" | "unknown" }
  | { readonly kind: "empty" };

/** How many bytes {@link sniff} needs at most. */
export const sniffBytes = 512;

const extensionsOf: Readonly<Record<PhotoFormat, readonly string[]>> = {
  jpeg: ["jpg", "jpeg", "jpe", "jfif"],
  png: ["png"],
  webp: ["webp"],
  heic: ["heic", "heif", "hif"],
  tiff: ["tif", "tiff"],
};

/** Names a format as people write it. */
export const formatName: Readonly<Record<PhotoFormat, string>> = { jpeg: "JPEG", png: "PNG", webp: "WebP", heic: "HEIC", tiff: "TIFF" };

/** @param head - The first bytes of the file, {@link sniffBytes} or all of them. */
export const sniff = (head: Uint8Array): Sniffed => {
  if (head.length === 0) return { kind: "empty" };
  const ascii = (from: number, to: number): string => String.fromCharCode(...head.subarray(from, to));
  const starts = (...bytes: readonly number[]): boolean => bytes.every((byte, index) => head[index] === byte);
  const photo = (format: PhotoFormat): Sniffed => ({ kind: "photo", format });

  if (starts(0xff, 0xd8, 0xff)) return photo("jpeg");
  if (starts(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return photo("png");
  if (ascii(0, 4) === "RIFF" && ascii(8, 12) === "WEBP") return photo("webp");
  if (ascii(4, 8) === "ftyp") return sniffBrand(ascii(8, Math.min(head.length, boxEnd(head))));
  if (starts(0x49, 0x49, 0x2a, 0x00) || starts(0x4d, 0x4d, 0x00, 0x2a)) {
    // Some cameras' raw files are TIFF inside and say so at byte 8.
    return ascii(8, 10) === "CR" ? { kind: "other-picture", found: "raw" } : photo("tiff");
  }
  if (starts(0x49, 0x49, 0x2b, 0x00) || starts(0x4d, 0x4d, 0x00, 0x2b)) return photo("tiff");
  if (ascii(0, 4) === "GIF8") return { kind: "other-picture", found: "gif" };
  if (ascii(0, 2) === "BM" && head.length > 26) return { kind: "other-picture", found: "bmp" };
  if (starts(0xff, 0x0a) || ascii(4, 8) === "JXL ") return { kind: "other-picture", found: "jxl" };
  if (ascii(0, 5) === "%PDF-") return { kind: "other", found: "pdf" };
  if (starts(0x50, 0x4b, 0x03, 0x04)) return { kind: "other", found: "zip" };
  if (looksLikeText(head)) return { kind: "other", found: ascii(0, 200).includes("<svg") ? "svg" : "text" };
  return { kind: "other", found: "unknown" };
};

/** Whether a name's extension belongs to another format than the content's; a name without extension says nothing. */
export const extensionDisagrees = (fileName: string, format: PhotoFormat): boolean => {
  const extension = /\.([A-Za-z0-9]{1,5})$/.exec(fileName)?.[1]?.toLowerCase();
  if (extension === undefined) return false;
  const known = Object.values(extensionsOf).flat().includes(extension);
  return known ? !extensionsOf[format].includes(extension) : /^(gif|bmp|txt|pdf|mp4|mov|avif|jxl)$/.test(extension);
};

const boxEnd = (head: Uint8Array): number => ((head[0] ?? 0) << 24) | ((head[1] ?? 0) << 16) | ((head[2] ?? 0) << 8) | (head[3] ?? 0);

/** @param brands - The major brand, four bytes of version, then the compatible brands. */
const sniffBrand = (brands: string): Sniffed => {
  const all = [brands.slice(0, 4), ...(brands.slice(8).match(/.{4}/gs) ?? [])];
  if (all.includes("avif") || all.includes("avis")) return { kind: "other-picture", found: "avif" };
  if (all.some((brand) => ["heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1"].includes(brand))) {
    return { kind: "photo", format: "heic" };
  }
  return all.includes("crx ") ? { kind: "other-picture", found: "raw" } : { kind: "other", found: "film" };
};

const looksLikeText = (head: Uint8Array): boolean => {
  const odd = head.reduce((count, byte) => count + (byte < 9 || (byte > 13 && byte < 32) || byte === 127 ? 1 : 0), 0);
  return odd === 0;
};
