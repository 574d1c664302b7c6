/** The front door of the media layer: everything that touches pixels and the metadata inside a photograph's file. */
export { derivativeSizes } from "./derivative-sizes.js";
export type { DerivativePx } from "./derivative-sizes.js";
export type { Derivative } from "./derivatives.js";
export { publicImage, renderPlate } from "./on-demand.js";
export { maxFileBytes, maxPixels, maxSidePx } from "./photo-refusal.js";
export type { PhotoRefusal } from "./photo-refusal.js";
export { openPhotoWorkers } from "./photo-workers.js";
export type { PhotoWorkers } from "./photo-workers.js";
export type { PublicImage, PublicImageOptions } from "./public-image.js";
export type { MetadataNote, PhotoMetadata } from "./read-metadata.js";
export { extensionDisagrees, formatName, sniff, sniffBytes } from "./sniff.js";
export type { PhotoFormat, Sniffed } from "./sniff.js";
export type { ReadPhoto } from "./worker.js";
export type { PlateExif, PlatePicture } from "./render-svg.js";
