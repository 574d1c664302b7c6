/** Makes again the small copies that are missing, from the originals: after a restored archive, a crash, or a lost folder. */
import type { PhotoId } from "../engine/index.js";
import type { PhotoWorkers } from "../media/index.js";
import type { BookStore } from "../store/index.js";
import { missingSizes, refusalText } from "./bring-photos.js";

export interface RemakeReport {
  /** Photographs whose missing copies were made. */
  readonly made: number;
  /** Photographs that had both. */
  readonly whole: number;
  /** Photographs that cannot be read any more, each with what is wrong. */
  readonly failed: readonly { readonly photoId: PhotoId; readonly code: string; readonly text: string }[];
  readonly cancelled: boolean;
}

/** Goes through all photographs of the book. A photograph that fails does not stop the rest. */
export const remakeDerivatives = async (effects: {
  readonly store: BookStore;
  readonly workers: PhotoWorkers;
  readonly signal?: AbortSignal;
  readonly progress?: (done: number, total: number) => void;
}): Promise<RemakeReport> => {
  const { store, workers, signal } = effects;
  const ids = (await store.list("photo")).map((photo) => photo.id);
  const failed: { photoId: PhotoId; code: string; text: string }[] = [];
  let made = 0;
  let whole = 0;
  let begun = 0;
  const one = async (id: PhotoId): Promise<void> => {
    const sizes = await missingSizes(store, id);
    if (sizes.length === 0) {
      whole += 1;
      return;
    }
    if (!(await store.files.hasOriginal(id))) {
      const refusal = { code: "cannot-be-read", values: { why: "its original is missing" } } as const;
      failed.push({ photoId: id, code: "original-missing", text: refusalText(refusal) });
      return;
    }
    const read = await workers.read(store.files.originalPath(id), { sizes });
    if (!read.ok) {
      failed.push({ photoId: id, code: read.problem.code, text: refusalText(read.problem) });
      return;
    }
    for (const derivative of read.value.derivatives) await store.files.writeDerivative(id, derivative.size, derivative.jpeg);
    made += 1;
  };
  const lane = async (): Promise<void> => {
    while (begun < ids.length && signal?.aborted !== true) {
      const id = ids[begun];
      begun += 1;
      if (id !== undefined) await one(id);
      effects.progress?.(made + whole + failed.length, ids.length);
    }
  };
  const lanes = await Promise.allSettled(Array.from({ length: workers.threads + 1 }, lane));
  const broken = lanes.find((result) => result.status === "rejected");
  if (broken !== undefined) throw broken.reason as Error;
  return { made, whole, failed, cancelled: signal?.aborted === true };
};
