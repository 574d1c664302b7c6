/** What runs in a worker thread: a file in, its metadata and small copies out. Started by `photo-workers.ts` only. */
import { readFile, stat } from "node:fs/promises";
import { fail, ok } from "../engine/index.js";
import type { Result } from "../engine/index.js";
import { readHeader, refusalOf, tooManyBytes } from "./decode.js";
import { derivativesOf } from "./derivatives.js";
import type { DerivativePx } from "./derivative-sizes.js";
import type { Derivative } from "./derivatives.js";
import { maxFileBytes } from "./photo-refusal.js";
import type { PhotoRefusal } from "./photo-refusal.js";
import { publicImage } from "./public-image.js";
import type { PublicImage, PublicImageOptions } from "./public-image.js";
import { readMetadata } from "./read-metadata.js";
import type { PhotoMetadata } from "./read-metadata.js";
import type { PhotoFormat } from "./sniff.js";

/** A photograph that was read whole. */
export interface ReadPhoto {
  readonly format: PhotoFormat;
  readonly bytes: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** As applied to the derivatives; for HEIC 1, see `decode.ts`. */
  readonly orientation: number;
  readonly pageCount: number;
  readonly metadata: PhotoMetadata;
  /** In the order of the sizes asked for. */
  readonly derivatives: readonly Derivative[];
}

/** Reads a file once and makes what is asked for. Throws only when the file cannot be opened. */
export const readPhoto = async (task: {
  readonly path: string;
  readonly sizes: readonly DerivativePx[];
}): Promise<Result<ReadPhoto, PhotoRefusal>> => {
  const { size } = await stat(task.path);
  if (size > maxFileBytes) return fail(tooManyBytes(size));
  const bytes = await readFile(task.path);
  const header = await readHeader(bytes);
  if (!header.ok) return header;
  const { open, ...picture } = header.value;
  try {
    const derivatives = await derivativesOf(await open(), task.sizes);
    return ok({ ...picture, bytes: size, metadata: readMetadata(bytes), derivatives });
  } catch (error) {
    return fail(refusalOf(error, picture.format));
  }
};

/** {@link publicImage}, off the main thread. */
export const makePublicImage = async (task: {
  readonly path: string;
  readonly options: PublicImageOptions;
}): Promise<Result<PublicImage, PhotoRefusal>> => await publicImage(task.path, task.options);
