/**
 * The one place where errors become problem details (RFC 9457). Handlers throw; what comes out here is all a client sees:
 * an error nobody foresaw is a 500 without its inner text, and its stack goes to the log under the same `instance`.
 */
import { randomUUID } from "node:crypto";
import type { z } from "zod";
import { isTaggedError, NotInBook, Refused, Unanswered } from "../app/index.js";
import type { ProblemDetails } from "../contract/index.js";
import type { Word } from "../words/index.js";
import { say } from "../words/index.js";

/** A problem of the request itself, found before any use case: host, origin, media type, size. */
export class RequestProblem extends Error {
  readonly status: number;
  readonly code: string;
  readonly title: Word;
  readonly remedy: string | undefined;
  readonly errors: ProblemDetails["errors"];
  constructor(
    status: number,
    code: string,
    title: Word,
    detail: string,
    more: { remedy?: string; errors?: ProblemDetails["errors"] } = {},
  ) {
    super(detail);
    this.name = "RequestProblem";
    this.status = status;
    this.code = code;
    this.title = title;
    this.remedy = more.remedy;
    this.errors = more.errors;
  }
}

const at = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (inner, key) => (typeof inner === "object" && inner !== null ? (inner as Readonly<Record<PropertyKey, unknown>>)[key] : undefined),
    value,
  );

const shown = (value: unknown): string | undefined => {
  if (value === undefined) return undefined;
  try {
    return (typeof value === "string" ? value : JSON.stringify(value)).slice(0, 80);
  } catch (error) {
    // Lists within lists deeper than the stack can be read but not written.
    if (error instanceof RangeError) return undefined;
    throw error;
  }
};

/** JSON Pointer (RFC 6901) of a path. */
export const pointerOf = (path: readonly PropertyKey[]): string =>
  path.map((key) => `/${String(key).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");

/** A request whose `part` did not fit its schema. Pointers into the body stand alone; others begin with /params or /query. */
export const invalidRequest = (part: "params" | "query" | "body", input: unknown, error: z.ZodError): RequestProblem => {
  const errors = error.issues.map((issue) => {
    const value = shown(at(input, issue.path));
    const pointer = pointerOf(part === "body" ? issue.path : [part, ...issue.path]);
    return value === undefined ? { pointer, detail: issue.message } : { pointer, value, detail: issue.message };
  });
  const first = errors[0];
  const detail = say("problem.invalid", {
    count: errors.length,
    first: first === undefined ? "" : `${first.pointer || "/"}: ${first.detail}`,
  });
  return new RequestProblem(400, "invalid-request", "problem.title.invalid", detail, { remedy: say("refused.remedy"), errors });
};

/** Statuses of tagged errors of the layers below, by code; a code not listed is a 422: understood, not possible. */
const statusOfCode: Readonly<Record<string, number>> = {
  "record-in-use": 409,
  "book-locked": 423,
  "disk-full": 507,
  "upload-cut-short": 400,
  "upload-too-large": 413,
  "original-missing": 404,
};

const details = (status: number, code: string, title: Word, detail: string): ProblemDetails => ({
  type: `/problems/${code}`,
  title: say(title),
  status,
  detail,
  code,
});

const withText = (problem: ProblemDetails, key: "kept" | "remedy", text: string | undefined): ProblemDetails =>
  text === undefined || text === "" ? problem : { ...problem, [key]: text };

/** Told of errors nobody foresaw. */
export type ErrorLog = (instance: string, error: unknown) => void;

/** @returns the problem a client is told; `log` hears of unforeseen errors with their stack. */
export const problemOf = (error: unknown, log: ErrorLog): ProblemDetails => {
  if (error instanceof RequestProblem) {
    const problem = withText(details(error.status, error.code, error.title, error.message), "remedy", error.remedy);
    return error.errors === undefined ? problem : { ...problem, errors: error.errors };
  }
  if (error instanceof NotInBook) return details(404, error.code, "problem.title.not-found", error.message);
  if (error instanceof Unanswered)
    return {
      ...details(409, error.code, "problem.title.questions", error.message),
      remedy: error.remedy,
      questions: error.questions.map((question) => ({ ...question })),
    };
  if (error instanceof Refused) {
    let problem = details(422, error.code, "problem.title.refused", error.message);
    problem = withText(withText(problem, "kept", error.kept), "remedy", error.remedy);
    return error.errors.length === 0 ? problem : { ...problem, errors: error.errors.map((fault) => ({ ...fault })) };
  }
  if (isTaggedError(error)) {
    const problem = details(statusOfCode[error.code] ?? 422, error.code, "problem.title.book", error.message);
    return withText(withText(problem, "kept", error.kept), "remedy", error.remedy);
  }
  const instance = `urn:uuid:${randomUUID()}`;
  log(instance, error);
  return { ...details(500, "unforeseen", "problem.title.internal", say("problem.internal", { instance })), instance };
};

/** The problem as a response. */
export const problemResponse = (problem: ProblemDetails): Response =>
  new Response(JSON.stringify(problem), {
    status: problem.status,
    headers: { "Content-Type": "application/problem+json; charset=utf-8", "Cache-Control": "no-store" },
  });
