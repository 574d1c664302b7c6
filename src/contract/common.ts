/** Pieces that many routes share. */
import { z } from "zod";
import { characterId, isoDate, lookId, photoId, readingId, taxonId } from "../engine/index.js";

/** Text with the parts of scientific names marked for italics. */
export const spans = z.array(z.object({ text: z.string(), italic: z.boolean() }));
export type Spans = z.infer<typeof spans>;

/** "as of": only evidence up to this day counts; missing = the day the book is read at. */
export const asOf = z.object({ upTo: isoDate.optional() });

/** What an assertion rests on. */
export const proofLinks = z.object({
  characterIds: z.array(characterId),
  lookIds: z.array(lookId),
  readingIds: z.array(readingId),
  photoIds: z.array(photoId),
});
export type ProofLinks = z.infer<typeof proofLinks>;

export const editSummary = z.object({
  id: z.number().int(),
  at: z.string(),
  label: z.string(),
  by: z.string(),
  rowCount: z.number().int(),
  state: z.enum(["done", "undone"]),
  undoable: z.boolean(),
});

export const taxonName = z.object({ taxonId, name: spans, plain: z.string(), vernacular: z.string() });
export type TaxonName = z.infer<typeof taxonName>;

/** A long piece of work on the server. */
export const job = z.object({
  id: z.string(),
  kind: z.enum(["bring", "demo-photos", "derivatives", "publish", "proof"]),
  label: z.string(),
  done: z.number().int(),
  total: z.number().int(),
  state: z.enum(["running", "done", "failed", "cancelled"]),
  message: z.string(),
});
export type Job = z.infer<typeof job>;
