/** The book as a whole: what it is, undo and history, the check, the year. */
import { z } from "zod";
import { bookInfo, happening, isoDate, outingId, person, plantId, resultWord, stage, stageId, view } from "../engine/index.js";
import { asOf, editSummary, job, spans } from "./common.js";
import { route } from "./route.js";

export const bookOverview = z.object({
  info: bookInfo,
  folder: z.string(),
  /** The day the book is read at. */
  upTo: isoDate,
  people: z.array(person),
  stages: z.array(stage),
  views: z.array(view),
  counts: z.object({
    plants: z.number(),
    outings: z.number(),
    looks: z.number(),
    readings: z.number(),
    photos: z.number(),
    unsorted: z.number(),
    spots: z.number(),
    tables: z.number(),
  }),
  undo: z.string().nullable(),
  redo: z.string().nullable(),
  jobs: z.array(job),
});
export type BookOverview = z.infer<typeof bookOverview>;

/** One followed plant's ring in the year. */
export const yearRing = z.object({
  plantId,
  nick: z.string(),
  word: resultWord,
  settled: z.boolean(),
  /** "One of two: square-stalked or short-fruited willowherb." */
  standing: spans,
  marks: z.array(
    z.object({
      outingId,
      date: isoDate,
      stageId: stageId.nullable(),
      stageName: z.string(),
      kind: z.enum(["seen", "unsure", "not-reached", "nothing-left"]),
      why: z.string(),
      photoCount: z.number().int(),
      lookCount: z.number().int(),
    }),
  ),
  happenings: z.array(happening),
});

export const yearView = z.object({
  year: z.number().int(),
  upTo: isoDate,
  rings: z.array(yearRing),
  outings: z.array(z.object({ outingId, date: isoDate, goal: z.string() })),
  stages: z.array(stage),
  /** What stands first: sentences on what is due, what is open, what was missed. */
  due: z.array(z.object({ plantId, nick: z.string(), sentence: z.string(), when: z.string(), tool: z.string(), lost: z.boolean() })),
  summary: z.array(z.string()),
});
export type YearView = z.infer<typeof yearView>;

export const proofReport = z.object({
  clean: z.boolean(),
  originalsChecked: z.number().int(),
  recordsChecked: z.number().int(),
  findings: z.array(z.object({ code: z.string(), text: z.string(), path: z.string().optional() })),
});

export const bookRoutes = {
  "GET /api/book": route({ summary: "What this book is and holds", reply: bookOverview }),
  "PUT /api/book": route({ summary: "Change the book's title, notice, zone, rule or reading day", body: bookInfo, reply: bookOverview }),
  "GET /api/year": route({ summary: "The year: rings of plants, outings, what is due", query: asOf, reply: yearView }),
  "GET /api/history": route({
    summary: "What was done, newest first",
    query: z.object({ limit: z.coerce.number().int().min(1).max(500).default(50) }),
    reply: z.object({ edits: z.array(editSummary) }),
  }),
  "POST /api/undo": route({ summary: "Take back the newest edit that stands", reply: z.object({ edit: editSummary.nullable() }) }),
  "POST /api/redo": route({ summary: "Do again what was taken back last", reply: z.object({ edit: editSummary.nullable() }) }),
  "POST /api/proof": route({ summary: "Re-hash every original and check the database", reply: proofReport }),
  "GET /api/jobs": route({ summary: "Long work and how far it is", reply: z.object({ jobs: z.array(job) }) }),
  "DELETE /api/jobs/{jobId}": route({
    summary: "Stop a long piece of work; what is finished stays",
    params: z.object({ jobId: z.string() }),
    reply: job,
  }),
} as const;
