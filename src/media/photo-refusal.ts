/** Why a file cannot be taken in as a photograph. An ordinary outcome of bringing files home: a value, never thrown. */

/** `code` is stable and tested; `values` are the facts. The sentence is said by the catalogue of words: `photo.refused.<code>`. */
export interface PhotoRefusal {
  readonly code:
    /** The file has no bytes. */
    | "empty"
    /** Text, a film, a document, an unknown format. */
    | "not-a-photograph"
    /** A picture, in a format that is not read here. */
    | "format-not-read"
    /** The file ends before the picture does. */
    | "cut-short"
    /** The picture cannot be decoded. */
    | "damaged"
    /** More pixels than {@link maxPixels}. */
    | "too-many-pixels"
    /** More bytes than {@link maxFileBytes}. */
    | "too-many-bytes"
    /** Decoding did not end in time. */
    | "took-too-long"
    /** The source could not be read to its end. */
    | "cannot-be-read";
  readonly values: Readonly<Record<string, string | number>>;
}

/**
 * The most pixels, all pages together, that are decoded: 2^28, 268 megapixels, 16,384 squared. The largest camera sensors
 * of 2022 have about 150 megapixels (from memory). Checked in the header, before a pixel is decoded.
 */
export const maxPixels = 16_384 * 16_384;

/** The longest side that is decoded, pixels: JPEG itself ends at 65,535. */
export const maxSidePx = 65_535;

/** The largest file that is taken in, 256 MiB: it is held in memory while it is read. */
export const maxFileBytes = 256 * 1024 * 1024;
