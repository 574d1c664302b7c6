/** Puts the routes of the contract onto the server: reads, validates, calls the handler, replies. One function for all. */
import { PassThrough, Readable } from "node:stream";
import type { ReadableStream as NodeReadableStream } from "node:stream/web";
import type { Context, Hono } from "hono";
import type { z } from "zod";
import { api } from "../contract/index.js";
import type { Api, Route } from "../contract/index.js";
import { say } from "../words/index.js";
import type { Desk, Handlers, IncomingFile } from "./handlers.js";
import { invalidRequest, RequestProblem } from "./problem.js";

const MB = 1_000_000;
/** A table as CSV text is the largest JSON we take. */
const jsonLimit = 60 * MB;
/** The largest photograph that is taken, 256 MiB as in the media layer: more would be sent whole only to be refused. */
const fileLimit = 256 * 1024 * 1024;

const tooLarge = (limit: number, code = "body-too-large"): RequestProblem =>
  new RequestProblem(413, code, "problem.title.too-large", say("problem.too-large", { limit: `${Math.round(limit / MB)} MB` }));

const mediaType = (c: Context): string => (c.req.header("content-type") ?? "").split(";")[0]?.trim().toLowerCase() ?? "";

const wantMedia = (c: Context, wanted: string, fits: (type: string) => boolean): void => {
  const given = mediaType(c);
  if (!fits(given))
    throw new RequestProblem(415, "media-type", "problem.title.media", say("problem.media", { wanted, given: given || "—" }));
};

const announcedLength = (c: Context): number | undefined => {
  const text = c.req.header("content-length");
  return text !== undefined && /^\d{1,15}$/.test(text) ? Number(text) : undefined;
};

const readJson = async (c: Context): Promise<unknown> => {
  wantMedia(c, "application/json", (type) => type === "application/json");
  if ((announcedLength(c) ?? 0) > jsonLimit) throw tooLarge(jsonLimit);
  const chunks: Uint8Array[] = [];
  let size = 0;
  try {
    if (c.req.raw.body !== null)
      for await (const chunk of Readable.fromWeb(c.req.raw.body as NodeReadableStream<Uint8Array>)) {
        const bytes = chunk as Uint8Array;
        size += bytes.byteLength;
        if (size > jsonLimit) throw tooLarge(jsonLimit);
        chunks.push(bytes);
      }
    return JSON.parse(Buffer.concat(chunks).toString("utf8")) as unknown;
  } catch (error) {
    if (error instanceof RequestProblem) throw error;
    // No JSON, or a connection that broke in the middle of it: no fault of ours.
    const why = error instanceof Error ? error.message : String(error);
    throw new RequestProblem(400, "invalid-json", "problem.title.invalid", say("problem.invalid-json", { why }));
  }
};

/** The body as a stream that fails when it is too long, or ends before (or after) the announced length. */
const streamFile = (c: Context, fileName: string): IncomingFile => {
  wantMedia(c, "application/octet-stream, image/*", (type) => type === "application/octet-stream" || type.startsWith("image/"));
  const length = announcedLength(c);
  if (length === undefined) throw new RequestProblem(411, "length-missing", "problem.title.invalid", say("problem.no-length"));
  if (length > fileLimit) throw tooLarge(fileLimit, "upload-too-large");
  const cutShort = (got: number): RequestProblem =>
    new RequestProblem(
      400,
      "upload-cut-short",
      "problem.title.invalid",
      say("problem.cut-short", { file: fileName, expected: String(length), got: String(got) }),
    );
  let got = 0;
  let failure: Error | undefined;
  const counted = new PassThrough({
    transform(chunk: Uint8Array, _encoding, done) {
      got += chunk.byteLength;
      if (got > length) done(cutShort(got));
      else done(null, chunk);
    },
    flush(done) {
      done(got === length ? null : cutShort(got));
    },
  });
  const source = c.req.raw.body === null ? Readable.from([]) : Readable.fromWeb(c.req.raw.body as NodeReadableStream<Uint8Array>);
  // A connection that breaks ends the source with an error of Node's; what the use case sees is that the file is cut short.
  source.on("error", () => counted.destroy(cutShort(got)));
  counted.on("error", (error) => {
    failure = error;
    source.destroy();
  });
  source.pipe(counted);
  return { bytes: counted, length, failure: () => failure };
};

const parsePart = (part: "params" | "query" | "body", schema: z.ZodType | undefined, input: () => unknown): unknown => {
  if (schema === undefined) return undefined;
  const value = input();
  const parsed = schema.safeParse(value);
  if (!parsed.success) throw invalidRequest(part, value, parsed.error);
  return parsed.data;
};

/** A reply that breaks the contract is a bug of ours: it is not sent. */
const checkedReply = (name: string, schema: z.ZodType, reply: unknown): void => {
  const checked = schema.safeParse(reply);
  if (!checked.success) throw new TypeError(`${name} requires a reply by the contract: got ${checked.error.message}`);
};

export interface MountOptions {
  /** Validate every reply as well; for tests, it costs time. */
  readonly checkReplies: boolean;
}

type AnyHandler = (input: unknown, desk: Desk) => Promise<unknown>;

/** Mounts every route of the contract. */
export const mount = (app: Hono, handlers: Handlers, desk: Desk, { checkReplies }: MountOptions): void => {
  for (const name of Object.keys(api) as (keyof Api)[]) {
    const definition: Route = api[name];
    // The mapped type ties each handler to its route; a loop over all of them cannot say so.
    const handler = handlers[name] as unknown as AnyHandler;
    const [method = "", path = ""] = name.split(" ");
    app.on(method, path.replaceAll(/\{(\w+)\}/g, ":$1"), async (c) => {
      const params = parsePart("params", definition.params, () => c.req.param());
      const query = parsePart("query", definition.query, () => c.req.query());
      const json = definition.body === undefined ? undefined : await readJson(c);
      const body = parsePart("body", definition.body, () => json);
      const file = definition.raw === true ? streamFile(c, c.req.param("fileName") ?? "") : undefined;
      const reply = await handler({ params, query, body, file, signal: c.req.raw.signal }, desk);
      c.header("Cache-Control", "no-store");
      if (definition.reply === null) return c.body(null, 204);
      if (checkReplies) checkedReply(name, definition.reply, reply);
      return c.body(JSON.stringify(reply), 200, { "Content-Type": "application/json; charset=utf-8" });
    });
  }
};
