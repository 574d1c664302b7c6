/** Lets a thread read `worker.ts` when the program runs from its TypeScript sources; never shipped, tsx is a development package. */
import { register } from "tsx/esm/api";

register();
const worker = await import("./worker.ts");
export const { readPhoto, makePublicImage } = worker;
