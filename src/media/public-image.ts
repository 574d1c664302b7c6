/**
 * A copy of a photograph for publication: decoded and encoded anew, so that nothing of the original's metadata can come
 * through — no place, no serial numbers, no maker notes, no embedded preview, no profile. Credit and licence may be
 * written as XMP (Dublin Core `rights`, `creator`; `xmpRights:UsageTerms`, ISO 16684-1).
 */
import { readFile, stat } from "node:fs/promises";
import { fail, ok } from "../engine/index.js";
import type { Result } from "../engine/index.js";
import { readHeader, refusalOf, tooManyBytes } from "./decode.js";
import { maxFileBytes } from "./photo-refusal.js";
import type { PhotoRefusal } from "./photo-refusal.js";

export interface PublicImageOptions {
  /** Longest side, pixels; never enlarged. */
  readonly maxPx: number;
  readonly format: "jpeg" | "webp";
  /** 1-100; 82 when missing. */
  readonly quality?: number;
  /** "Photograph: T. M. W." Written into the file when not empty. */
  readonly credit?: string;
  /** "CC BY 4.0". Written into the file when not empty. */
  readonly licence?: string;
}

export interface PublicImage {
  readonly bytes: Uint8Array;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly mediaType: "image/jpeg" | "image/webp";
}

/**
 * Makes the copy. Blocks the thread for HEIC (0.7 s for twelve megapixels): use the workers for many.
 *
 * @throws RangeError when `maxPx` or `quality` is out of range; what the file system throws when the file cannot be opened.
 */
export const publicImage = async (originalPath: string, options: PublicImageOptions): Promise<Result<PublicImage, PhotoRefusal>> => {
  const { maxPx, format, quality = 82, credit = "", licence = "" } = options;
  if (!Number.isInteger(maxPx) || maxPx < 16 || maxPx > 16_384)
    throw new RangeError(`publicImage requires maxPx from 16 to 16384: got ${maxPx}`);
  if (!Number.isInteger(quality) || quality < 1 || quality > 100)
    throw new RangeError(`publicImage requires quality from 1 to 100: got ${quality}`);
  const { size } = await stat(originalPath);
  if (size > maxFileBytes) return fail(tooManyBytes(size));
  const header = await readHeader(await readFile(originalPath));
  if (!header.ok) return header;
  try {
    const picture = (await header.value.open()).resize(maxPx, maxPx, { fit: "inside", withoutEnlargement: true });
    const named = credit === "" && licence === "" ? picture : picture.withXmp(rightsXmp(credit, licence));
    const encoded = format === "jpeg" ? named.jpeg({ quality }) : named.webp({ quality, effort: 4 });
    const { data, info } = await encoded.toBuffer({ resolveWithObject: true });
    return ok({ bytes: data, widthPx: info.width, heightPx: info.height, mediaType: format === "jpeg" ? "image/jpeg" : "image/webp" });
  } catch (error) {
    return fail(refusalOf(error, header.value.format));
  }
};

const escapeXml = (text: string): string =>
  text
    .replaceAll(/[^\P{C}\n\t]/gu, " ")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;");

const rightsXmp = (credit: string, licence: string): string => {
  const text = (name: string, value: string): string =>
    value === "" ? "" : `<${name}><rdf:Alt><rdf:li xml:lang="x-default">${escapeXml(value)}</rdf:li></rdf:Alt></${name}>`;
  const creator = credit === "" ? "" : `<dc:creator><rdf:Seq><rdf:li>${escapeXml(credit)}</rdf:li></rdf:Seq></dc:creator>`;
  return (
    `<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?><x:xmpmeta xmlns:x="adobe:ns:meta/">` +
    `<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about=""` +
    ` xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmpRights="http://ns.adobe.com/xap/1.0/rights/">` +
    `${creator}${text("dc:rights", [credit, licence].filter((part) => part !== "").join(", "))}${text("xmpRights:UsageTerms", licence)}` +
    `</rdf:Description></rdf:RDF></x:xmpmeta><?xpacket end="w"?>`
  );
};
