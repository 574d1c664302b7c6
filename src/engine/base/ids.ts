/**
 * Identifiers, branded by kind so that a photo's id cannot be handed in where a plant's is meant. They are opaque:
 * nothing may be read out of their text. A taxon's id never changes when its name does.
 */
import { z } from "zod";

/** What every identifier looks like: short, printable, safe in a path and in a URL. */
const idText = z
  .string()
  .min(1)
  .max(120)
  .regex(/^[A-Za-z0-9][A-Za-z0-9._:-]*$/, "use letters, digits, dot, colon, hyphen or underscore, beginning with a letter or digit");

export const spotId = idText.brand<"SpotId">();
export const permissionId = idText.brand<"PermissionId">();
export const plantId = idText.brand<"PlantId">();
export const outingId = idText.brand<"OutingId">();
export const stopId = idText.brand<"StopId">();
export const stageRecordId = idText.brand<"StageRecordId">();
export const lookId = idText.brand<"LookId">();
export const readingId = idText.brand<"ReadingId">();
export const slipId = idText.brand<"SlipId">();
export const happeningId = idText.brand<"HappeningId">();
export const personId = idText.brand<"PersonId">();
export const tableId = idText.brand<"TableId">();
export const taxonId = idText.brand<"TaxonId">();
export const characterId = idText.brand<"CharacterId">();
export const stateId = idText.brand<"StateId">();
export const stageId = idText.brand<"StageId">();
export const viewId = idText.brand<"ViewId">();
export const sourceId = idText.brand<"SourceId">();
export const voucherId = idText.brand<"VoucherId">();
export const accountId = idText.brand<"AccountId">();
/** SHA-256 of the untouched original file, 64 lower-case hexadecimal digits: the photo's identity. */
export const photoId = z
  .string()
  .regex(/^[0-9a-f]{64}$/, "a photo's id is the SHA-256 of its file: 64 hexadecimal digits")
  .brand<"PhotoId">();

export type SpotId = z.infer<typeof spotId>;
export type PermissionId = z.infer<typeof permissionId>;
export type PlantId = z.infer<typeof plantId>;
export type OutingId = z.infer<typeof outingId>;
export type StopId = z.infer<typeof stopId>;
export type StageRecordId = z.infer<typeof stageRecordId>;
export type LookId = z.infer<typeof lookId>;
export type ReadingId = z.infer<typeof readingId>;
export type SlipId = z.infer<typeof slipId>;
export type HappeningId = z.infer<typeof happeningId>;
export type PersonId = z.infer<typeof personId>;
export type TableId = z.infer<typeof tableId>;
export type TaxonId = z.infer<typeof taxonId>;
export type CharacterId = z.infer<typeof characterId>;
export type StateId = z.infer<typeof stateId>;
export type StageId = z.infer<typeof stageId>;
export type ViewId = z.infer<typeof viewId>;
export type SourceId = z.infer<typeof sourceId>;
export type VoucherId = z.infer<typeof voucherId>;
export type AccountId = z.infer<typeof accountId>;
export type PhotoId = z.infer<typeof photoId>;
