/**
 * A reference table: what published sources say of each taxon in each character. "Not applicable" (no stalk, so no
 * stalk length) and "unknown" (nobody says) are different things and never stand for absence.
 */
import { z } from "zod";
import { characterId, sourceId, stateId, tableId, taxonId } from "../base/ids.js";
import { character } from "./character.js";
import { stage } from "./vocabulary.js";

export const taxon = z.object({
  id: taxonId,
  /** The name without authorship: `Epilobium obscurum`. Parts are set by engine/names. */
  name: z.string().min(1).max(200),
  authorship: z.string().max(200).default(""),
  family: z.string().max(80).default(""),
  rank: z.enum(["genus", "section", "aggregate", "species", "subspecies", "variety", "form", "hybrid", "other"]).default("species"),
  synonyms: z.array(z.string().max(200)).default([]),
  /** Vernacular names by language tag. */
  vernacular: z.record(z.string().max(12), z.string().max(120)).default({}),
  /** "native", "introduced" and the like, as the source says. */
  status: z.string().max(60).default(""),
  flowerMonths: z.string().max(20).default(""),
  /** Altitude band in words. */
  band: z.string().max(120).default(""),
  inOneLine: z.string().max(300).default(""),
  /** A rival that must be excluded here. Others are support only (out of range) unless the keeper of the book adds them. */
  expectedInCounty: z.boolean().default(true),
  /** Poison, skin, law: shown before the activity. */
  cautions: z.array(z.string().max(400)).default([]),
});
export type Taxon = z.infer<typeof taxon>;

/** One cell of the table, without its address. Range: extremes in brackets may be missing; low and high are the usual. */
export const scoreValue = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("states"), usual: z.array(stateId), rarely: z.array(stateId).default([]) }),
  z
    .object({
      kind: z.literal("range"),
      min: z.number().nullable().default(null),
      low: z.number(),
      high: z.number(),
      max: z.number().nullable().default(null),
    })
    .refine((r) => (r.min ?? r.low) <= r.low && r.low <= r.high && r.high <= (r.max ?? r.high), {
      message: "the numbers of a range must ascend: (min-)low-high(-max)",
    }),
  z.object({ kind: z.literal("not-applicable") }),
  z.object({ kind: z.literal("unknown") }),
]);
export type ScoreValue = z.infer<typeof scoreValue>;

export const score = z.object({
  taxonId,
  characterId,
  value: scoreValue,
  sourceId: sourceId.nullable().default(null),
  /** Page and exact words of the source, where read from one. */
  page: z.string().max(40).default(""),
  words: z.string().max(600).default(""),
});
export type Score = z.infer<typeof score>;

export const source = z.object({
  id: sourceId,
  /** A full citation as it should be printed. */
  citation: z.string().min(1).max(1000),
  licence: z.string().max(120).default(""),
});
export type Source = z.infer<typeof source>;

export const hybridPair = z.object({ parents: z.tuple([taxonId, taxonId]), note: z.string().max(300).default("") });
export type HybridPair = z.infer<typeof hybridPair>;

export const referenceTable = z.object({
  id: tableId,
  title: z.string().min(1).max(200),
  /** Shown wherever values of this table are shown; the demo says "not for identification". */
  notice: z.string().max(600).default(""),
  stages: z.array(stage),
  characters: z.array(character),
  taxa: z.array(taxon),
  scores: z.array(score),
  sources: z.array(source).default([]),
  knownHybrids: z.array(hybridPair).default([]),
});
export type ReferenceTable = z.infer<typeof referenceTable>;
