/** Makes a small copy of a photograph that is missing: they can always be made again from the original. */
import type { PhotoId } from "../engine/index.js";
import type { PhotoWorkers } from "../media/index.js";
import type { BookStore, DerivativeSize } from "../store/index.js";
import { say } from "../words/index.js";
import { notInBook, Refused } from "./app-error.js";
import { refusalText } from "./bring-photos.js";

/**
 * A function that makes a derivative unless it is there; asked for the same one several times at once it makes it once.
 * It throws {NotInBook} when the original is not there, {Refused} `image-unreadable` when it cannot be decoded.
 */
export const derivativeMaker = (store: BookStore, workers: () => PhotoWorkers): ((id: PhotoId, size: DerivativeSize) => Promise<void>) => {
  const underWay = new Map<string, Promise<void>>();
  const make = async (id: PhotoId, size: DerivativeSize): Promise<void> => {
    if (!(await store.files.hasOriginal(id))) throw notInBook("photo", id);
    const read = await workers().read(store.files.originalPath(id), { sizes: [size] });
    const made = read.ok ? read.value.derivatives.find((one) => one.size === size) : undefined;
    if (made === undefined) {
      const why = read.ok ? "" : refusalText(read.problem);
      throw new Refused({ code: "image-unreadable", detail: say("problem.image-unreadable", { why }) });
    }
    await store.files.writeDerivative(id, size, made.jpeg);
  };
  return (id, size) => {
    const key = `${id}/${size}`;
    const waiting = underWay.get(key);
    if (waiting !== undefined) return waiting;
    const making = make(id, size).finally(() => underWay.delete(key));
    underWay.set(key, making);
    return making;
  };
};
