/** Sends a file of this machine: HEAD, conditional requests and one byte range (RFC 9110, sections 13 and 14). */
import { createReadStream } from "node:fs";
import { Readable } from "node:stream";
import type { Context } from "hono";
import { say } from "../words/index.js";
import { RequestProblem } from "./problem.js";

const types: Readonly<Record<string, string>> = {
  html: "text/html; charset=utf-8",
  css: "text/css; charset=utf-8",
  js: "text/javascript; charset=utf-8",
  mjs: "text/javascript; charset=utf-8",
  json: "application/json; charset=utf-8",
  map: "application/json; charset=utf-8",
  webmanifest: "application/manifest+json; charset=utf-8",
  svg: "image/svg+xml",
  png: "image/png",
  jpg: "image/jpeg",
  jpeg: "image/jpeg",
  webp: "image/webp",
  ico: "image/x-icon",
  woff2: "font/woff2",
  pdf: "application/pdf",
  txt: "text/plain; charset=utf-8",
  csv: "text/csv; charset=utf-8",
  xml: "application/xml; charset=utf-8",
  vtt: "text/vtt; charset=utf-8",
  zip: "application/zip",
};

/** The media type by the ending of a file's name; unknown ones are plain bytes. */
export const mediaTypeOf = (path: string): string =>
  types[/\.([a-z0-9]+)$/i.exec(path)?.[1]?.toLowerCase() ?? ""] ?? "application/octet-stream";

/** A single range of bytes, both ends included; "whole" when the header asks for none we serve. */
export const readRange = (header: string | undefined, size: number): { start: number; end: number } | "whole" | "impossible" => {
  if (header === undefined) return "whole";
  // Several ranges, other units and malformed ones may be ignored: the whole is sent then (RFC 9110, 14.2).
  const found = /^bytes=(\d*)-(\d*)$/.exec(header.trim());
  if (found === null) return "whole";
  const [, first = "", last = ""] = found;
  if (first === "" && last === "") return "whole";
  if (first === "") {
    const length = Math.min(Number(last), size);
    return length === 0 ? "impossible" : { start: size - length, end: size - 1 };
  }
  const start = Number(first);
  if (last !== "" && Number(last) < start) return "whole";
  return start >= size ? "impossible" : { start, end: last === "" ? size - 1 : Math.min(Number(last), size - 1) };
};

const matches = (header: string | undefined, etag: string): boolean =>
  header !== undefined && (header.trim() === "*" || header.split(",").some((tag) => tag.trim().replace(/^W\//, "") === etag));

export interface FileToSend {
  readonly path: string;
  readonly size: number;
  readonly etag?: string;
  readonly type?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

const stream = (path: string, start: number, end: number): ReadableStream =>
  Readable.toWeb(createReadStream(path, { start, end })) as unknown as ReadableStream;

/** @throws {RequestProblem} 416 for a range beyond the end. */
export const sendFile = (c: Context, { path, size, etag, type, headers = {} }: FileToSend): Response => {
  const out = new Headers({ ...headers, "Accept-Ranges": "bytes" });
  if (etag !== undefined) out.set("ETag", etag);
  if (etag !== undefined && matches(c.req.header("if-none-match"), etag)) return new Response(null, { status: 304, headers: out });
  out.set("Content-Type", type ?? mediaTypeOf(path));
  const ifRange = c.req.header("if-range");
  const range = readRange(ifRange === undefined || ifRange === etag ? c.req.header("range") : undefined, size);
  if (range === "impossible") {
    c.header("Content-Range", `bytes */${size}`);
    throw new RequestProblem(416, "range-beyond-end", "problem.title.invalid", say("problem.range"));
  }
  const [start, end] = range === "whole" ? [0, size - 1] : [range.start, range.end];
  out.set("Content-Length", String(end - start + 1));
  if (range !== "whole") out.set("Content-Range", `bytes ${start}-${end}/${size}`);
  const body = c.req.method === "HEAD" || size === 0 ? null : stream(path, start, end);
  return new Response(body, { status: range === "whole" ? 200 : 206, headers: out });
};
