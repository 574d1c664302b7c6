/**
 * What the page says to the local server, typed by the contract alone: no schema is shipped. One function for every
 * route, and two hooks over it: `useApi` reads, `useSend` writes and then holds nothing for fresh any more.
 */
import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import type { UseMutationResult, UseQueryResult } from "@tanstack/react-query";
import type { z } from "zod";
import type { Api, ProblemDetails } from "../contract/index.js";
import { say } from "../words/index.js";

/** "GET /api/plants/{plantId}" and the like. */
export type RouteKey = keyof Api;
type ReadKey = Extract<RouteKey, `GET ${string}`>;

type InputOf<T> = T extends z.ZodType ? z.input<T> : never;
type Part<Name extends string, T> = [T] extends [never]
  ? unknown
  : Record<never, never> extends T
    ? { readonly [N in Name]?: T }
    : { readonly [N in Name]: T };
type Member<K extends RouteKey, Name extends string> = Api[K] extends { readonly [N in Name]: infer T } ? InputOf<T> : never;
type Body<K extends RouteKey> = Api[K] extends { readonly raw: true } ? Blob : Member<K, "body">;

/** What a route takes: places in its path, query, body (for a route that takes a file: the file). */
export type RouteInput<K extends RouteKey> = Part<"params", Member<K, "params">> &
  Part<"query", Member<K, "query">> &
  ([Body<K>] extends [never] ? unknown : { readonly body: Body<K> });
/** What a route replies. */
export type RouteReply<K extends RouteKey> = Api[K]["reply"] extends z.ZodType ? z.output<Api[K]["reply"]> : null;

/** What went wrong, as problem details (RFC 9457): what happened, what was kept, what to do. */
export class ApiProblem extends Error {
  override readonly name = "ApiProblem";
  readonly code: string;
  readonly details: ProblemDetails;
  constructor(details: ProblemDetails, options?: ErrorOptions) {
    super(details.detail, options);
    this.code = details.code;
    this.details = details;
  }
}

const isProblem = (value: unknown): value is ProblemDetails =>
  typeof value === "object" && value !== null && "detail" in value && "code" in value && "title" in value;

const noAnswer = (cause: unknown): ApiProblem =>
  new ApiProblem(
    {
      type: "about:blank",
      title: say("web.problem.no-answer.title"),
      status: 0,
      code: "no-answer",
      detail: say("web.problem.no-answer.detail"),
      kept: say("web.problem.no-answer.kept"),
      remedy: say("web.problem.no-answer.remedy"),
    },
    { cause },
  );

const strange = (status: number, cause: unknown): ApiProblem =>
  new ApiProblem(
    {
      type: "about:blank",
      title: say("web.problem.strange.title"),
      status,
      code: "strange-answer",
      detail: say("web.problem.strange.detail", { status }),
      remedy: say("web.problem.strange.remedy"),
    },
    { cause },
  );

interface LooseInput {
  readonly params?: Readonly<Record<string, unknown>>;
  readonly query?: Readonly<Record<string, unknown>>;
  readonly body?: unknown;
}

/** The address of a route with its places filled and its query written. */
export const addressOf = (key: RouteKey, input: LooseInput = {}): string => {
  const path = key.slice(key.indexOf(" ") + 1).replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = input.params?.[name];
    if (typeof value !== "string") throw new TypeError(`${key}: no value for the place {${name}}`);
    return encodeURIComponent(value);
  });
  const query = new URLSearchParams();
  for (const [name, value] of Object.entries(input.query ?? {}))
    if (typeof value === "string" || typeof value === "number" || typeof value === "boolean") query.set(name, String(value));
  const text = query.toString();
  return text === "" ? path : `${path}?${text}`;
};

/**
 * Calls a route.
 * @throws {ApiProblem} when the server reports a problem, answers something else, or does not answer.
 */
export const call = async <K extends RouteKey>(key: K, input: RouteInput<K>, signal?: AbortSignal): Promise<RouteReply<K>> => {
  const loose = input as LooseInput;
  const { body } = loose;
  const headers: Record<string, string> = { accept: "application/json" };
  const init: RequestInit = { method: key.slice(0, key.indexOf(" ")), headers };
  if (signal !== undefined) init.signal = signal;
  if (body instanceof Blob) {
    init.body = body;
    headers["content-type"] = "application/octet-stream";
  } else if (body !== undefined) {
    init.body = JSON.stringify(body);
    headers["content-type"] = "application/json";
  }
  let response: Response;
  try {
    response = await fetch(addressOf(key, loose), init);
  } catch (cause) {
    if (signal?.aborted === true) throw cause;
    throw noAnswer(cause);
  }
  if (response.status === 204) return null as RouteReply<K>;
  let reply: unknown;
  try {
    reply = await response.json();
  } catch (cause) {
    if (signal?.aborted === true) throw cause;
    throw strange(response.status, cause);
  }
  if (response.ok) return reply as RouteReply<K>;
  throw isProblem(reply) ? new ApiProblem(reply) : strange(response.status, reply);
};

/**
 * Reads a route and keeps it. While the same thing is read at another day, the last answer stays on the page, so that
 * nothing jumps; another plant's answer never does.
 */
export const useApi = <K extends ReadKey>(
  key: K,
  input: RouteInput<K>,
  options: {
    readonly enabled?: boolean;
    /** Reads again after so many milliseconds; decided on what was read last. */
    readonly everyMs?: number | false | ((last: RouteReply<K> | undefined) => number | false);
  } = {},
): UseQueryResult<RouteReply<K>, ApiProblem> => {
  const { enabled = true, everyMs = false } = options;
  const params = JSON.stringify((input as LooseInput).params ?? null);
  return useQuery<RouteReply<K>, ApiProblem>({
    queryKey: [key, input],
    queryFn: ({ signal }) => call(key, input, signal),
    enabled,
    refetchInterval: typeof everyMs === "function" ? (query) => everyMs(query.state.data) : everyMs,
    placeholderData: (last, lastQuery) => {
      const before = lastQuery?.queryKey[1] as LooseInput | undefined;
      return JSON.stringify(before?.params ?? null) === params ? (last as never) : undefined;
    },
  });
};

/** Writes by a route; afterwards everything read is read anew, since any write may change any case. */
export const useSend = <K extends RouteKey>(key: K): UseMutationResult<RouteReply<K>, ApiProblem, RouteInput<K>> => {
  const client = useQueryClient();
  return useMutation<RouteReply<K>, ApiProblem, RouteInput<K>>({
    mutationFn: (input) => call(key, input),
    onSuccess: () => client.invalidateQueries(),
  });
};
