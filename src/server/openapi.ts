/** The interface of this server as an OpenAPI 3.1 document, made from the same schemas that validate it. */
import { z } from "zod";
import { api, problemDetails } from "../contract/index.js";
import type { Route } from "../contract/index.js";

type Json = Readonly<Record<string, unknown>>;

/** JSON Schema (draft 2020-12, which OpenAPI 3.1 takes as it is) without its own `$schema` line. */
const schemaOf = (schema: z.ZodType, io: "input" | "output"): Json => {
  const { $schema: _dialect, ...rest } = z.toJSONSchema(schema, { target: "draft-2020-12", io, unrepresentable: "any" });
  return rest;
};

const parametersOf = (schema: z.ZodObject | undefined, place: "path" | "query"): Json[] => {
  if (schema === undefined) return [];
  const json = schemaOf(schema, "input") as { properties?: Readonly<Record<string, Json>>; required?: readonly string[] };
  return Object.entries(json.properties ?? {}).map(([name, one]) => ({
    name,
    in: place,
    required: place === "path" || (json.required ?? []).includes(name),
    schema: one,
  }));
};

const operationOf = (name: string, route: Route): Json => ({
  operationId: name
    .replaceAll(/[^A-Za-z]+/g, "-")
    .replaceAll(/^-|-$/g, "")
    .toLowerCase(),
  summary: route.summary,
  parameters: [...parametersOf(route.params, "path"), ...parametersOf(route.query, "query")],
  ...(route.body === undefined
    ? {}
    : { requestBody: { required: true, content: { "application/json": { schema: schemaOf(route.body, "input") } } } }),
  ...(route.raw === true ? { requestBody: { required: true, content: { "application/octet-stream": {}, "image/*": {} } } } : {}),
  responses: {
    ...(route.reply === null
      ? { 204: { description: "Done; no content" } }
      : { 200: { description: "Done", content: { "application/json": { schema: schemaOf(route.reply, "output") } } } }),
    default: {
      description: "A problem (RFC 9457)",
      content: { "application/problem+json": { schema: { $ref: "#/components/schemas/ProblemDetails" } } },
    },
  },
});

/** The document. @param version of the program */
export const openApiDocument = (version: string): Json => {
  const paths: Record<string, Record<string, Json>> = {};
  for (const [name, route] of Object.entries(api)) {
    const [method = "", path = ""] = name.split(" ");
    (paths[path] ??= {})[method.toLowerCase()] = operationOf(name, route);
  }
  return {
    openapi: "3.1.0",
    info: { title: "Stipule, local server", version },
    servers: [{ url: "/" }],
    paths,
    components: { schemas: { ProblemDetails: schemaOf(problemDetails, "output") } },
  };
};
