/**
 * The followed plant and what surrounds it: its spot, the outings, the stops made at it, stages, happenings, slips. The
 * plant is the folder: a name is a slip that may change and moves nothing.
 */
import { z } from "zod";
import { isoDate, localTime, utcOffset } from "../base/dates.js";
import {
  happeningId,
  outingId,
  permissionId,
  photoId,
  plantId,
  slipId,
  spotId,
  stageId,
  stageRecordId,
  stopId,
  tableId,
  taxonId,
  viewId,
  voucherId,
} from "../base/ids.js";

/**
 * How finely a place may be published: categories 1-4 of Chapman (2020), Current Best Practices for Generalizing
 * Sensitive Species Occurrence Data, table 7 (doi 10.15468/doc-5jp4-5g10): rounded to a grid, never shifted at random.
 */
export const publicPlaceClass = z.enum(["as-measured", "0.001-degree", "0.01-degree", "0.1-degree", "1-degree", "withheld"]);
export type PublicPlaceClass = z.infer<typeof publicPlaceClass>;

export const spot = z.object({
  id: spotId,
  name: z.string().min(1).max(120),
  setting: z.string().max(200).default(""),
  /** WGS 84, decimal degrees; null when only a verbal locality is known. */
  lat: z.number().min(-90).max(90).nullable().default(null),
  lon: z.number().min(-180).max(180).nullable().default(null),
  uncertaintyM: z.number().positive().max(1_000_000).nullable().default(null),
  elevationM: z.number().min(-500).max(9000).nullable().default(null),
  shade: z.string().max(60).default(""),
  access: z.string().max(400).default(""),
  note: z.string().max(1000).default(""),
  /** IANA time zone, for photographs whose camera wrote no offset. */
  zone: z.string().max(60).default("UTC"),
  publishAs: publicPlaceClass.default("0.001-degree"),
  /** Why it is sensitive; empty when it is not. */
  sensitiveBecause: z.string().max(400).default(""),
});
export type Spot = z.infer<typeof spot>;

export const permission = z.object({
  id: permissionId,
  from: isoDate,
  to: isoDate,
  by: z.string().max(200),
  allows: z.string().max(400).default(""),
  forbids: z.string().max(400).default(""),
  /** Spots it covers; empty = all. */
  spotIds: z.array(spotId).default([]),
});
export type Permission = z.infer<typeof permission>;

export const followedPlant = z.object({
  id: plantId,
  nick: z.string().min(1).max(80),
  spotId,
  /** "patch of about 35 stems, 6 marked with wool" */
  marks: z.string().max(400).default(""),
  stemCount: z.number().int().min(1).nullable().default(null),
  markedStemCount: z.number().int().min(0).nullable().default(null),
  tableId,
  /** The look-alikes to exclude; empty = every taxon of the table that is expected in the county. */
  rivalIds: z.array(taxonId).default([]),
  note: z.string().max(2000).default(""),
});
export type FollowedPlant = z.infer<typeof followedPlant>;

/** Something that happened to a plant and bounds what can still be seen this year. */
export const happening = z.object({
  id: happeningId,
  plantId,
  date: isoDate,
  kind: z.enum(["mown", "grazed", "flooded", "trampled", "died", "other"]),
  /** No part of this year's growth can be seen after that day. */
  endsYear: z.boolean(),
  note: z.string().max(400).default(""),
});
export type Happening = z.infer<typeof happening>;

export const outing = z.object({
  id: outingId,
  date: isoDate,
  start: z
    .string()
    .regex(/^\d{2}:\d{2}$/)
    .nullable()
    .default(null),
  end: z
    .string()
    .regex(/^\d{2}:\d{2}$/)
    .nullable()
    .default(null),
  weather: z.string().max(200).default(""),
  people: z.array(z.string().max(60)).default([]),
  goal: z.string().max(400).default(""),
  note: z.string().max(4000).default(""),
  /** Seconds to add to a camera's time to get the phone's; null = not looked at yet. */
  cameraShiftS: z.number().int().min(-172_800).max(172_800).nullable().default(null),
});
export type Outing = z.infer<typeof outing>;

/** One halt of an outing at a plant, by the phone's clock. */
export const stop = z.object({
  id: stopId,
  outingId,
  plantId,
  from: localTime,
  to: localTime,
});
export type Stop = z.infer<typeof stop>;

export const stageRecord = z.object({
  id: stageRecordId,
  plantId,
  outingId,
  date: isoDate,
  /** null: the plant was not reached or nothing stood there; `why` says it. */
  stageId: stageId.nullable(),
  answer: z.enum(["yes", "no", "unsure", "not-looked"]),
  /** Share of flowers open, percent, where counted. */
  sharePercent: z.number().min(0).max(100).nullable().default(null),
  why: z.string().max(400).default(""),
});
export type StageRecord = z.infer<typeof stageRecord>;

/** The result words of a determination, from most to least said. */
export const resultWord = z.enum(["species", "cf", "one-of-two", "hybrid-question", "genus-only", "not-enough-evidence"]);
export type ResultWord = z.infer<typeof resultWord>;

/** A determination slip: a name, by whom, when, why. Slips are a history, as on a herbarium sheet: never overwritten. */
export const slip = z.object({
  id: slipId,
  plantId,
  on: isoDate,
  by: z.string().min(1).max(120),
  /** The name as written, without authorship. */
  name: z.string().min(1).max(240),
  taxonIds: z.array(taxonId).default([]),
  /** det. = determined, conf. = confirmed, vid. = seen without opinion. */
  role: z.enum(["det", "conf", "vid"]).default("det"),
  qualifier: z.enum(["", "cf.", "aff.", "?"]).default(""),
  why: z.string().min(1).max(1000),
  /** Later overturned: kept, shown, no longer standing. */
  overturned: z.boolean().default(false),
});
export type Slip = z.infer<typeof slip>;

export const voucher = z.object({
  id: voucherId,
  number: z.string().min(1).max(60),
  plantId,
  date: isoDate,
  stemsInPatch: z.number().int().min(1),
  stemsTaken: z.number().int().min(0),
  parts: z.string().max(300).default(""),
  kept: z.string().max(300).default(""),
  /** Why it was refused; null = it was taken. */
  refusedBecause: z.string().max(400).nullable().default(null),
});
export type Voucher = z.infer<typeof voucher>;

/** A sheet: one photograph. Its file is never changed; all that is said about it stands here. */
export const photo = z.object({
  id: photoId,
  /** Name of the file as it was brought; may be any Unicode. Never used as a path. */
  fileName: z.string().max(1024),
  format: z.enum(["jpeg", "png", "webp", "heic", "tiff"]),
  bytes: z.number().int().positive(),
  /** Pixels as displayed, after orientation. */
  widthPx: z.number().int().positive(),
  heightPx: z.number().int().positive(),
  /** EXIF orientation, 1-8; 1 when missing or invalid. */
  orientation: z.number().int().min(1).max(8),
  /** As the camera's clock wrote it; null when missing or impossible. */
  takenCamera: localTime.nullable().default(null),
  takenOffset: utcOffset.nullable().default(null),
  /** Why there is no time or place, in words; empty when all is well. */
  metadataNote: z.string().max(400).default(""),
  lat: z.number().min(-90).max(90).nullable().default(null),
  lon: z.number().min(-180).max(180).nullable().default(null),
  altitudeM: z.number().nullable().default(null),
  camera: z.string().max(120).default(""),
  broughtAt: z.string().max(40),
  /** Where it was put: by the clock and the stops, or by hand. */
  outingId: outingId.nullable().default(null),
  plantId: plantId.nullable().default(null),
  placedBy: z.enum(["nobody", "clock", "hand"]).default("nobody"),
  stageId: stageId.nullable().default(null),
  viewId: viewId.nullable().default(null),
  part: z.string().max(60).default(""),
  caption: z.string().max(1000).default(""),
  altText: z.string().max(1000).default(""),
  credit: z.string().max(200).default(""),
  licence: z.string().max(120).default(""),
  leaveOut: z.string().min(1).max(400).nullable().default(null),
  note: z.string().max(2000).default(""),
});
export type Photo = z.infer<typeof photo>;
