/** Followed plants: the list, the plant page with its evidence board, the case, side by side. */
import { z } from "zod";
import {
  characterId,
  followedPlant,
  happening,
  isoDate,
  look,
  lookId,
  outing,
  permission,
  photoId,
  plantId,
  reading,
  readingId,
  resultWord,
  slip,
  spot,
  stage,
  stageId,
  stageRecord,
  taxonId,
  tool,
  viewId,
  voucher,
} from "../engine/index.js";
import { asOf, proofLinks, spans, taxonName } from "./common.js";
import { route } from "./route.js";

/** How a plant stands in words. */
export const standing = z.object({ word: resultWord, settled: z.boolean(), headline: spans, explanation: z.string() });
export type Standing = z.infer<typeof standing>;

export const plantCard = z.object({
  plant: followedPlant,
  spotName: z.string(),
  standing,
  photoCount: z.number().int(),
  lookCount: z.number().int(),
  outingCount: z.number().int(),
  /** A photograph of the habit where there is one. */
  coverPhotoId: photoId.nullable(),
  lastDate: isoDate.nullable(),
});
export type PlantCard = z.infer<typeof plantCard>;

export const boardCell = z.object({
  stageId,
  /**
   * seen: a state or a measure; not-there: looked for and not there; could-not-tell; open: can be seen in this stage, nobody
   * looked; cannot: not to be seen in this stage.
   */
  kind: z.enum(["seen", "not-there", "could-not-tell", "open", "cannot"]),
  /** What stands on the tile. */
  label: z.string(),
  /** The whole sentence, for title and screen reader; on an open tile when and with what it could be seen. */
  sentence: z.string(),
  leftOut: z.boolean(),
  lookIds: z.array(lookId),
  readingIds: z.array(readingId),
  photoIds: z.array(photoId),
});
export type BoardCell = z.infer<typeof boardCell>;

export const board = z.object({
  stages: z.array(stage),
  rows: z.array(
    z.object({
      characterId,
      part: z.string(),
      name: z.string(),
      tool,
      group: z.string(),
      disturbs: z.boolean(),
      applies: z.boolean(),
      cells: z.array(boardCell),
    }),
  ),
});
export type Board = z.infer<typeof board>;

export const plantPage = z.object({
  plant: followedPlant,
  spot,
  permissions: z.array(permission.extend({ expired: z.boolean() })),
  cautions: z.array(z.string()),
  standing,
  board,
  conflicts: z.array(z.object({ characterId, sentence: z.string(), lookIds: z.array(lookId) })),
  looks: z.array(look),
  readings: z.array(reading),
  stageRecords: z.array(stageRecord),
  outings: z.array(outing),
  happenings: z.array(happening),
  slips: z.array(slip),
  vouchers: z.array(voucher),
  photoIds: z.array(photoId),
  missingViews: z.array(z.object({ viewId, name: z.string(), stageId, stageName: z.string() })),
});
export type PlantPage = z.infer<typeof plantPage>;

/** One independent witness, for or against, in plain words. */
export const witnessLine = proofLinks.extend({
  group: z.string(),
  title: z.string(),
  detail: z.string(),
  /** Decibans against the runner-up; positive speaks for. */
  decibans: z.number().nullable(),
});
export type WitnessLine = z.infer<typeof witnessLine>;

export const rivalLine = taxonName.extend({
  left: z.boolean(),
  inRange: z.boolean(),
  /** "out by glands (x20, 5 flowers) and by seeds" */
  sentence: z.string(),
  witnessCount: z.number().int(),
  againstSum: z.number(),
  probability: z.number(),
  against: z.array(witnessLine),
  /** What would have to be wrong for it to be right. */
  ifRight: z.string(),
});
export type RivalLine = z.infer<typeof rivalLine>;

export const checkLine = z.object({
  characterId,
  title: z.string(),
  /** "leafy runners or rosettes; no tool; part the litter with two fingers" */
  how: z.string(),
  /** "can be seen 1 September to 20 November" */
  when: z.string(),
  /** "would tell square-stalked from short-fruited willowherb" */
  why: z.string(),
  from: isoDate.nullable(),
  to: isoDate.nullable(),
  tool,
  disturbs: z.boolean(),
  pairs: z.number(),
  score: z.number(),
  bits: z.number().nullable(),
  /** "Not this year: mown on 20 July. Next year before 18 July." */
  lost: z.string().nullable(),
});
export type CheckLine = z.infer<typeof checkLine>;

export const caseView = z.object({
  plantId,
  nick: z.string(),
  upTo: isoDate,
  notice: z.string(),
  standing,
  leader: taxonName.nullable(),
  runnerUp: taxonName.nullable(),
  stands: z.array(witnessLine),
  standsAgainst: z.array(witnessLine),
  rivals: z.array(rivalLine),
  noneOfThese: z.number(),
  decide: z.array(checkLine),
  probability: z.object({
    leader: z.number().nullable(),
    typicality: z.number().nullable(),
    /** Chance of the leader with a uniform prior; the prior did nothing when equal. */
    withoutPrior: z.number().nullable(),
    sentence: z.string(),
  }),
  robustness: z.object({ leastWrong: z.number().int().nullable(), sentence: z.string(), characterIds: z.array(characterId) }),
  /** Where the visible rule and the probabilities part; null when they agree. */
  disagreement: z.string().nullable(),
  hybrid: z.object({
    pairs: z.array(z.object({ parents: z.array(taxonName), againstSum: z.number(), known: z.boolean(), sentence: spans })),
    signs: z.array(z.string()),
    checkAgain: z.array(z.object({ characterId, sentence: z.string() })),
  }),
  rule: z.object({ text: z.string(), groupsSeen: z.number().int(), outings: z.number().int(), wanting: z.array(z.string()) }),
  slips: z.array(slip.extend({ nameSpans: spans })),
});
export type CaseView = z.infer<typeof caseView>;

/** Two to six taxa side by side. */
export const apartView = z.object({
  taxa: z.array(taxonName),
  rows: z.array(
    z.object({
      characterId,
      part: z.string(),
      name: z.string(),
      tool,
      /** sure: nothing shared even rarely; usual: the usual values do not meet; none: they meet; silent: not scored for all. */
      difference: z.enum(["sure", "usual", "none", "silent"]),
      /** One cell per taxon, in the order of `taxa`. */
      cells: z.array(
        z.object({ text: z.string(), range: z.object({ min: z.number(), low: z.number(), high: z.number(), max: z.number() }).nullable() }),
      ),
      unit: z.string(),
      seenIn: z.array(stageId),
    }),
  ),
  /** Pairs that nothing in the table separates surely. */
  notSeparated: z.array(z.object({ a: taxonId, b: taxonId, sentence: z.string() })),
});
export type ApartView = z.infer<typeof apartView>;

const plantParams = z.object({ plantId });

export const plantRoutes = {
  "GET /api/plants": route({
    summary: "Followed plants and how each stands",
    query: asOf,
    reply: z.object({ plants: z.array(plantCard) }),
  }),
  "GET /api/plants/{plantId}": route({
    summary: "A plant's page with its evidence board",
    params: plantParams,
    query: asOf,
    reply: plantPage,
  }),
  "GET /api/plants/{plantId}/case": route({
    summary: "The case of a plant up to a day",
    params: plantParams,
    query: asOf,
    reply: caseView,
  }),
  "GET /api/tables/{tableId}/apart": route({
    summary: "Two to six taxa side by side, differences first",
    params: z.object({ tableId: z.string() }),
    query: z.object({ taxa: z.string().describe("taxon ids, comma-separated") }),
    reply: apartView,
  }),
} as const;
