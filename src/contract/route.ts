/**
 * One route of the local server as data: what it takes, what it replies, which problems it may report. The server
 * validates by it, the page is typed by it, the OpenAPI document is made of it.
 */
import type { z } from "zod";

export interface Route {
  readonly summary: string;
  readonly params?: z.ZodObject;
  readonly query?: z.ZodObject;
  readonly body?: z.ZodType;
  /** `raw`: the request's body is a file, streamed. */
  readonly raw?: true;
  /** null: no content. */
  readonly reply: z.ZodType | null;
}

/** Keeps the literal types of a route while checking its shape. */
export const route = <const R extends Route>(definition: R): R => definition;
