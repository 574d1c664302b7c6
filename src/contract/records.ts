/** Records that are written one by one. The id is made by the caller, so sending twice keeps one. */
import { z } from "zod";
import {
  account,
  followedPlant,
  happening,
  look,
  outing,
  permission,
  person,
  reading,
  slip,
  spot,
  stageRecord,
  stop,
  view,
  voucher,
} from "../engine/index.js";
import { editSummary } from "./common.js";
import { route } from "./route.js";

const idParams = z.object({ id: z.string().min(1).max(120) });
const written = z.object({ edit: editSummary });
const upsert = <T extends z.ZodType>(summary: string, body: T) => route({ summary, params: idParams, body, reply: written });
const removal = (summary: string) => route({ summary, params: idParams, reply: written });

/** A reading with the answer to the outlier guard: without `confirmed`, doubtful values come back as questions (409). */
export const readingToKeep = z.object({ reading, confirmed: z.boolean().default(false) });

export const recordRoutes = {
  "GET /api/places": route({
    summary: "Spots and permissions",
    reply: z.object({ spots: z.array(spot), permissions: z.array(permission) }),
  }),
  "GET /api/outings": route({
    summary: "Outings with their stops, newest first",
    reply: z.object({
      outings: z.array(outing.extend({ stops: z.array(stop), photoCount: z.number().int(), lookCount: z.number().int() })),
    }),
  }),
  "PUT /api/people/{id}": upsert("Keep a person", person),
  "PUT /api/views/{id}": upsert("Keep a view", view),
  "PUT /api/spots/{id}": upsert("Keep a spot", spot),
  "DELETE /api/spots/{id}": removal("Remove a spot that nothing uses"),
  "PUT /api/permissions/{id}": upsert("Keep a permission", permission),
  "DELETE /api/permissions/{id}": removal("Remove a permission"),
  "PUT /api/plants/{id}": upsert("Keep a followed plant", followedPlant),
  "DELETE /api/plants/{id}": removal("Remove a plant without evidence"),
  "PUT /api/happenings/{id}": upsert("Keep a happening (mown, flooded)", happening),
  "DELETE /api/happenings/{id}": removal("Remove a happening"),
  "PUT /api/outings/{id}": upsert("Keep an outing", outing),
  "DELETE /api/outings/{id}": removal("Remove an outing without evidence"),
  "PUT /api/stops/{id}": upsert("Keep a stop", stop),
  "DELETE /api/stops/{id}": removal("Remove a stop"),
  "PUT /api/stage-records/{id}": upsert("Keep a stage record", stageRecord),
  "DELETE /api/stage-records/{id}": removal("Remove a stage record"),
  "PUT /api/looks/{id}": upsert("Keep a look", look),
  "DELETE /api/looks/{id}": removal("Remove a look entered by mistake (undo brings it back)"),
  "PUT /api/readings/{id}": upsert("Keep a series of readings", readingToKeep),
  "DELETE /api/readings/{id}": removal("Remove a series entered by mistake (undo brings it back)"),
  "PUT /api/slips/{id}": upsert("Write a slip; a name against the case needs the writer's own reason", slip),
  "PUT /api/vouchers/{id}": upsert("Keep a voucher; refused by the 1-in-20 rule or a permission it comes back as a problem", voucher),
  "PUT /api/accounts/{id}": upsert("Keep what was written over the draft of an account", account),
} as const;
