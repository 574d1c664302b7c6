/** Species pages: which there are, the draft by sections, publishing. */
import { z } from "zod";
import { account, accountSection, plantId, tableId, taxonId } from "../engine/index.js";
import { taxonName } from "./common.js";
import { route } from "./route.js";

export const pageCard = taxonName.extend({
  tableId,
  plantIds: z.array(plantId),
  nicks: z.array(z.string()),
  settled: z.boolean(),
  published: z.string().nullable(),
});
export type PageCard = z.infer<typeof pageCard>;

export const pageDraft = taxonName.extend({
  account,
  notice: z.string(),
  /** Each section as it would be printed (safe HTML), with its origin. */
  sections: z.array(
    z.object({
      section: accountSection,
      title: z.string(),
      html: z.string(),
      origin: z.enum(["drafted", "edited"]),
      draftText: z.string(),
    }),
  ),
  missingAlt: z.array(z.object({ photoId: z.string(), fileName: z.string(), draft: z.string() })),
  /** What is held back or coarsened, in words. */
  heldBack: z.array(z.string()),
});
export type PageDraft = z.infer<typeof pageDraft>;

export const publication = z.object({
  folder: z.string(),
  files: z.number().int(),
  pdf: z.object({ made: z.boolean(), path: z.string().nullable(), text: z.string() }),
  missingAlt: z.array(z.string()),
  heldBack: z.array(z.string()),
  /** Where the page can be looked at on this server. */
  url: z.string(),
});
export type Publication = z.infer<typeof publication>;

const pageParams = z.object({ tableId, taxonId });

export const pageRoutes = {
  "GET /api/pages": route({ summary: "Species with plants that stand for them", reply: z.object({ pages: z.array(pageCard) }) }),
  "GET /api/pages/{tableId}/{taxonId}": route({ summary: "The draft of a species page", params: pageParams, reply: pageDraft }),
  "POST /api/pages/{tableId}/{taxonId}/publish": route({
    summary: "Write the page to a folder, with a PDF where a Chromium is present",
    params: pageParams,
    body: z.object({ pdf: z.boolean().default(true), paper: z.enum(["A4", "Letter"]).default("A4") }),
    reply: publication,
  }),
} as const;
