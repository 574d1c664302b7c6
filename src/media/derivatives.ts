/**
 * The small copies a screen needs: 320 and 2048 pixels on the longest side, upright, sRGB, JPEG, without any metadata. They
 * can always be made again from the original. JPEG because it is encoded in a third of WebP's time or less, at a size that
 * does not matter on a disc: the figures are in docs/decisions/0006-photographs.md.
 */
import sharp from "sharp";
import type { Sharp } from "sharp";
import type { DerivativePx } from "./derivative-sizes.js";

export interface Derivative {
  readonly size: DerivativePx;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly jpeg: Uint8Array;
}

const quality: Readonly<Record<DerivativePx, number>> = { 320: 78, 2048: 82 };

/**
 * Makes the sizes asked for from one decoding: the largest is resized from the picture, the others from it. Never enlarges.
 *
 * @param picture - Upright sRGB pixels. @throws what the decoder throws when the file is damaged.
 */
export const derivativesOf = async (picture: Sharp, sizes: readonly DerivativePx[]): Promise<readonly Derivative[]> => {
  const largest = Math.max(0, ...sizes);
  // Even when nothing is to be made the picture is decoded, so that a damaged one is found out.
  const { data, info } = await picture
    .resize(Math.max(largest, 320), Math.max(largest, 320), { fit: "inside", withoutEnlargement: true })
    .raw()
    .toBuffer({ resolveWithObject: true });
  return await Promise.all(
    sizes.map(async (size) => {
      const pixels = sharp(data, { raw: { width: info.width, height: info.height, channels: info.channels } });
      const small = size === largest ? pixels : pixels.resize(size, size, { fit: "inside", withoutEnlargement: true });
      const made = await small.jpeg({ quality: quality[size] }).toBuffer({ resolveWithObject: true });
      return { size, widthPx: made.info.width, heightPx: made.info.height, jpeg: made.data };
    }),
  );
};
