/**
 * What was seen of a followed plant: looks (a state seen, looked for and not there, could not tell) and readings
 * (measured series). A blank is never "absent": what nobody recorded was not looked at. Nothing here is deleted; a look
 * or reading that must not count is left out with its reason.
 */
import { z } from "zod";
import { isoDate } from "../base/dates.js";
import { characterId, lookId, outingId, photoId, plantId, readingId, stateId } from "../base/ids.js";

/** The four things that can be said of a character on a day. */
export const lookStatuses = ["seen", "not-there", "could-not-tell", "not-looked"] as const;
export const lookStatus = z.enum(lookStatuses);
export type LookStatus = z.infer<typeof lookStatus>;

export const look = z
  .object({
    id: lookId,
    plantId,
    outingId,
    characterId,
    /** The day of the outing, kept here so that evidence can be cut at a date without a join. */
    date: isoDate,
    status: lookStatus,
    /** States seen; more than one when several occur or one cannot decide between them. Empty unless `seen`. */
    states: z.array(stateId).max(20).default([]),
    sure: z.enum(["sure", "fairly", "between-two"]).default("sure"),
    /** Lens power in words, `x20`; null = naked eye. */
    lens: z.string().max(20).nullable().default(null),
    /** How many stems, flowers or seeds were looked at; needed for "none in n". */
    n: z.number().int().min(1).max(100_000).nullable().default(null),
    by: z.string().max(60).default(""),
    note: z.string().max(2000).default(""),
    /** Why it must not count (young, shade, damaged, weaker lens); null = it counts. */
    leaveOut: z.string().min(1).max(400).nullable().default(null),
    photoIds: z.array(photoId).default([]),
  })
  .refine((l) => (l.status === "seen") === l.states.length > 0, {
    message: "a look with status `seen` names at least one state; any other status names none",
    path: ["states"],
  });
export type Look = z.infer<typeof look>;

export const reading = z.object({
  id: readingId,
  plantId,
  outingId,
  characterId,
  date: isoDate,
  unit: z.string().max(12),
  values: z.array(z.number()).min(1).max(2000),
  /** How many stems the values come from: stems of one plant are the units, organs of one stem are not independent. */
  stems: z.number().int().min(1).max(10_000).nullable().default(null),
  method: z.string().max(80).default("ruler"),
  /** Error of one value, same unit, as a half-width. */
  plusMinus: z.number().positive().nullable().default(null),
  by: z.string().max(60).default(""),
  note: z.string().max(2000).default(""),
  leaveOut: z.string().min(1).max(400).nullable().default(null),
  photoIds: z.array(photoId).default([]),
});
export type Reading = z.infer<typeof reading>;
