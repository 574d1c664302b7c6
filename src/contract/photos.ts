/** Photographs: bringing, the sheets of the sorting trays, the clock. Images themselves: /image/{photoId}/{320|2048|original}. */
import { z } from "zod";
import { isoDate, localTime, outingId, photo, photoId, plantId, stageId, viewId } from "../engine/index.js";
import { editSummary, job } from "./common.js";
import { route } from "./route.js";

/** A sheet in the trays: just what sorting needs, for ten thousand at once. */
export const sheetRow = z.object({
  id: photoId,
  fileName: z.string(),
  /** By the phone's clock when the shift is known, else the camera's; null = the photo has no time. */
  taken: localTime.nullable(),
  outingId: outingId.nullable(),
  plantId: plantId.nullable(),
  placedBy: z.enum(["nobody", "clock", "hand"]),
  stageId: stageId.nullable(),
  viewId: viewId.nullable(),
  part: z.string(),
  widthPx: z.number().int(),
  heightPx: z.number().int(),
  leftOut: z.boolean(),
  hasAlt: z.boolean(),
});
export type SheetRow = z.infer<typeof sheetRow>;

/** What can be said of many sheets at once; a missing member stays as it is, null clears. */
export const sheetChange = z.object({
  plantId: plantId.nullable().optional(),
  outingId: outingId.nullable().optional(),
  stageId: stageId.nullable().optional(),
  viewId: viewId.nullable().optional(),
  part: z.string().max(60).optional(),
  caption: z.string().max(1000).optional(),
  altText: z.string().max(1000).optional(),
  credit: z.string().max(200).optional(),
  licence: z.string().max(120).optional(),
  leaveOut: z.string().min(1).max(400).nullable().optional(),
  note: z.string().max(2000).optional(),
});
export type SheetChange = z.infer<typeof sheetChange>;

/** What became of one file that was brought. */
export const broughtFile = z.object({
  fileName: z.string(),
  outcome: z.enum(["new", "already-here", "refused"]),
  photoId: photoId.nullable(),
  code: z.string(),
  text: z.string(),
});
export type BroughtFile = z.infer<typeof broughtFile>;

/** A camera clock that runs off, noticed against the stops of the walk. */
export const clockProposal = z.object({
  outingIds: z.array(outingId),
  dates: z.array(isoDate),
  /** Seconds to add to the camera's time. */
  shiftS: z.number().int(),
  photoCount: z.number().int(),
  onStopsBefore: z.number().int(),
  onStopsAfter: z.number().int(),
  /** "The camera seems 7 min 20 s behind the phone." */
  sentence: z.string(),
  /** False: the evidence is too thin to propose anything; nothing is shifted. */
  trustworthy: z.boolean(),
});
export type ClockProposal = z.infer<typeof clockProposal>;

export const photoRoutes = {
  "GET /api/sheets": route({ summary: "All sheets, by time", reply: z.object({ sheets: z.array(sheetRow) }) }),
  "GET /api/sheets/{photoId}": route({ summary: "All that is said of one sheet", params: z.object({ photoId }), reply: photo }),
  "PATCH /api/sheets": route({
    summary: "Say something of many sheets at once; one edit, one undo",
    body: z.object({ ids: z.array(photoId).min(1).max(20_000), change: sheetChange }),
    reply: z.object({ edit: editSummary, sheets: z.array(sheetRow) }),
  }),
  "PUT /api/bring/{fileName}": route({
    summary: "Bring one file: the body is the file itself, as it is; the name is kept as text only",
    params: z.object({ fileName: z.string().min(1).max(2048) }),
    raw: true,
    reply: broughtFile,
  }),
  "POST /api/bring/folder": route({
    summary: "Bring a folder of this machine",
    body: z.object({ folder: z.string().min(1).max(4096) }),
    reply: job,
  }),
  "GET /api/bring/outcomes": route({
    summary: "What became of the files of the last bringing of a folder",
    reply: z.object({ files: z.array(broughtFile) }),
  }),
  "GET /api/clock": route({ summary: "Camera clocks that seem to run off", reply: z.object({ proposals: z.array(clockProposal) }) }),
  "POST /api/clock": route({
    summary: "Shift camera times of outings and place their photographs by the stops; one edit",
    body: z.object({ outingIds: z.array(outingId).min(1), shiftS: z.number().int().min(-172_800).max(172_800) }),
    reply: z.object({ edit: editSummary, placed: z.number().int(), notSure: z.number().int() }),
  }),
} as const;
