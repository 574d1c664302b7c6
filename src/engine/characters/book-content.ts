/**
 * A whole book as plain data: what the store keeps, what the demo file becomes, what an archive holds. Photographs are
 * named by hash; their bytes lie beside.
 */
import { z } from "zod";
import { isoDate } from "../base/dates.js";
import { accountId, plantId, tableId, taxonId } from "../base/ids.js";
import { look, reading } from "./evidence.js";
import { followedPlant, happening, outing, permission, photo, slip, spot, stageRecord, stop, voucher } from "./followed-plant.js";
import { referenceTable } from "./reference-table.js";
import { person, stage, view } from "./vocabulary.js";

/** The visible rule by which a determination counts as settled. The defaults are those of the demo's reference rule. */
export const settledRule = z.object({
  /** A taxon is out when the weights that speak against it, the heaviest of each group, reach this sum. */
  outAt: z.number().int().min(1).max(40).default(4),
  /** Each rival must be spoken against by at least this many independent witnesses (groups). */
  witnessesPerRival: z.number().int().min(1).max(10).default(2),
  /** At least this many groups must have been seen at all. */
  groupsSeen: z.number().int().min(1).max(40).default(4),
  /** Evidence from at least this many outings. */
  outings: z.number().int().min(1).max(40).default(2),
  /** At least one witness from one of these parts or groups. */
  oneFromParts: z.array(z.string().max(60)).default(["flower", "fruit", "seed", "glands", "base"]),
});
export type SettledRule = z.infer<typeof settledRule>;

export const bookInfo = z.object({
  title: z.string().min(1).max(200),
  /** Shown on every page and in every publication when not empty: "Invented, not for identification". */
  notice: z.string().max(800).default(""),
  illustrative: z.boolean().default(false),
  language: z.string().max(12).default("en"),
  /** IANA zone for outings without a spot. */
  zone: z.string().max(60).default("UTC"),
  /** The day the book is read at when none is chosen; null = today. The demo's year is over, so it has one. */
  readAt: isoDate.nullable().default(null),
  settledRule: settledRule.prefault({}),
});
export type BookInfo = z.infer<typeof bookInfo>;

/** The sections of a species account, in print order. */
export const accountSections = [
  "in-one-line",
  "how-to-be-sure",
  "description",
  "own-measures",
  "look-alikes",
  "the-year",
  "setting",
  "cautions",
  "evidence",
  "sources",
  "credits",
] as const;
export const accountSection = z.enum(accountSections);
export type AccountSection = z.infer<typeof accountSection>;

/** What a person wrote over the draft of a species account; a section without an entry is drafted from evidence. */
export const account = z.object({
  id: accountId,
  taxonId,
  tableId,
  /** The plants it rests on. */
  plantIds: z.array(plantId),
  author: z.string().max(200).default(""),
  licence: z.string().max(120).default(""),
  edited: z.partialRecord(accountSection, z.string().max(20_000)).default({}),
});
export type Account = z.infer<typeof account>;

export const bookContent = z.object({
  info: bookInfo,
  people: z.array(person),
  stages: z.array(stage),
  views: z.array(view),
  spots: z.array(spot),
  permissions: z.array(permission),
  tables: z.array(referenceTable),
  plants: z.array(followedPlant),
  happenings: z.array(happening),
  outings: z.array(outing),
  stops: z.array(stop),
  stageRecords: z.array(stageRecord),
  looks: z.array(look),
  readings: z.array(reading),
  slips: z.array(slip),
  vouchers: z.array(voucher),
  photos: z.array(photo),
  accounts: z.array(account),
});
export type BookContent = z.infer<typeof bookContent>;
