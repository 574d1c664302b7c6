/** The types that tie handlers to the contract: a route without its handler, or a reply of another shape, does not compile. */
import type { Readable } from "node:stream";
import type { z } from "zod";
import type { Jobs, OpenBench, StarterTable, Workbench } from "../app/index.js";
import type { Api, Route } from "../contract/index.js";

/** What every handler is given besides its input. */
export interface Desk {
  readonly workbench: Workbench;
  readonly bench: OpenBench;
  readonly jobs: Jobs;
  readonly starters: readonly StarterTable[];
}

type Plain = string | number | boolean | null | undefined;
/** A value that nobody changes; domain objects and their parts pass as they are. */
export type Settled<T> = T extends Plain
  ? T
  : T extends readonly (infer U)[]
    ? readonly Settled<U>[]
    : T extends object
      ? { readonly [K in keyof T]: Settled<T[K]> }
      : T;

type Out<S> = S extends z.ZodType ? z.output<S> : undefined;
type Member<R, K extends string> = R extends { readonly [P in K]: infer S } ? Out<S> : undefined;

/** What a route takes, validated. `file` is there for raw routes only: the body as it streams in. */
export interface Parsed<R extends Route> {
  readonly params: Member<R, "params">;
  readonly query: Member<R, "query">;
  readonly body: Member<R, "body">;
  readonly file: R extends { readonly raw: true } ? IncomingFile : undefined;
  /** Aborted when the asker has gone away. */
  readonly signal: AbortSignal;
}

export interface IncomingFile {
  readonly bytes: Readable;
  /** As announced; the stream fails with `upload-cut-short` when another number comes. */
  readonly length: number;
  /** Why the stream failed; undefined as long as it did not. */
  readonly failure: () => Error | undefined;
}

/** What a route replies. */
export type Reply<R extends Route> = R["reply"] extends z.ZodType ? Settled<z.output<R["reply"]>> : null;

export type Handlers<K extends keyof Api = keyof Api> = {
  readonly [P in K]: (input: Parsed<Api[P]>, desk: Desk) => Promise<Reply<Api[P]>>;
};
