/**
 * A character: one question one can ask of a plant, with what may be answered, when it can be seen and with what tool,
 * and which other characters it speaks together with. It is not a value: values are looks and readings of a plant, or
 * scores of a taxon.
 */
import { z } from "zod";
import { characterId, stageId, stateId } from "../base/ids.js";

export const state = z.object({
  id: stateId,
  name: z.string().min(1).max(160),
  /** The state in plain words for a learner. */
  plain: z.string().max(400).default(""),
});
export type State = z.infer<typeof state>;

/** What one may answer. A ratio is computed leaf by leaf from two measures of the same organs, never from their means. */
export const answerKind = z.discriminatedUnion("kind", [
  z.object({
    kind: z.literal("states"),
    /** Ordered states are misread as their neighbours; unordered ones as any other. */
    ordered: z.boolean().default(false),
    states: z.array(state).min(1).max(60),
    /** The state that "looked, not there" stands for; null when not being there (yet) is no state. */
    absence: stateId.nullable().default(null),
  }),
  z.object({ kind: z.literal("measure"), unit: z.string().max(12), minN: z.number().int().min(1).default(5) }),
  z.object({ kind: z.literal("count"), minN: z.number().int().min(1).default(5) }),
  z.object({ kind: z.literal("ratio"), numerator: characterId, denominator: characterId, minN: z.number().int().min(1).default(5) }),
]);
export type AnswerKind = z.infer<typeof answerKind>;

/** What it takes to see it. The order is from nothing to most. */
export const tools = ["eye", "tape", "ruler", "ruler or photo", "x10", "x20", "bench lens", "dissection", "computed"] as const;
export const tool = z.enum(tools);
export type Tool = z.infer<typeof tool>;

export const character = z.object({
  id: characterId,
  part: z.string().min(1).max(60),
  name: z.string().min(1).max(160),
  answer: answerKind,
  /** Stages at which it can be seen. */
  seenIn: z.array(stageId).default([]),
  tool: tool.default("eye"),
  /** How much it counts under the "settled" rule, 0 (never speaks) to 5 (decides). */
  weight: z.number().int().min(0).max(5).default(3),
  /** Characters of one group are one witness: leaf length, width, ratio and shape say one thing. */
  group: z.string().min(1).max(60),
  /** It exists only where another character has one of these states (no stalk, no stalk length). */
  onlyIf: z
    .object({ character: characterId, states: z.array(stateId).min(1) })
    .nullable()
    .default(null),
  /**
   * "taxa": speaks for and against taxa. "support": place, season, altitude: flagged, never decisive. "hybrid-check":
   * never speaks for a species; a low value raises the question of a hybrid.
   */
  role: z.enum(["taxa", "support", "hybrid-check"]).default("taxa"),
  /** Usual errors, in plain words, shown before one looks. */
  errors: z.array(z.string().max(300)).default([]),
  /** Looking harms the plant or its place if done carelessly. */
  disturbs: z.boolean().default(false),
  /** Chance that a practised observer reports a wrong state, 0-0.5; null = the default of the engine. */
  misreading: z.number().min(0).max(0.5).nullable().default(null),
  note: z.string().max(600).default(""),
});
export type Character = z.infer<typeof character>;
