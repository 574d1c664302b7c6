/** Problem details (RFC 9457) as every failing route replies, with our own members `code`, `kept`, `remedy` and `errors`. */
import { z } from "zod";

export const problemDetails = z.object({
  /** A URI of the kind of problem: a page of the manual. */
  type: z.string(),
  title: z.string(),
  status: z.number().int(),
  detail: z.string(),
  instance: z.string().optional(),
  /** Stable, kebab-case. */
  code: z.string(),
  /** What is safe in spite of the problem. */
  kept: z.string().optional(),
  /** What to do. */
  remedy: z.string().optional(),
  errors: z.array(z.object({ pointer: z.string(), value: z.string().optional(), detail: z.string() })).optional(),
  /** Questions to be answered before the write is accepted ("5.1 mm among 50s: centimetres?"). */
  questions: z.array(z.object({ code: z.string(), text: z.string() })).optional(),
});
export type ProblemDetails = z.infer<typeof problemDetails>;
