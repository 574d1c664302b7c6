/**
 * What works on pixels in the thread that asks. The decoders are loaded at the first call: they are most of what a start of
 * the program would otherwise wait for, and many runs never touch a pixel.
 */
import type { PublicImage, PublicImageOptions } from "./public-image.js";
import type { PhotoRefusal } from "./photo-refusal.js";
import type { PlatePicture } from "./render-svg.js";
import type { Result } from "../engine/index.js";

/** {@link import("./public-image.js").publicImage}, loaded when called. */
export const publicImage = async (originalPath: string, options: PublicImageOptions): Promise<Result<PublicImage, PhotoRefusal>> =>
  await (await import("./public-image.js")).publicImage(originalPath, options);

/** {@link import("./render-svg.js").renderPlate}, loaded when called. */
export const renderPlate = async (picture: PlatePicture): Promise<Uint8Array> =>
  await (await import("./render-svg.js")).renderPlate(picture);
