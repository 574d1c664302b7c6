/**
 * Who may ask, and what a browser may do with the reply. The server listens on the loopback address; that alone does not
 * keep other web pages out: a page may name this machine by a domain of its own (DNS rebinding), or send a form to it
 * (cross-site request forgery). So the Host must be one of our own names with our port, an Origin must be ours, and a
 * request that changes something must show that our page or a program sent it.
 */
import type { MiddlewareHandler } from "hono";
import { say } from "../words/index.js";
import { RequestProblem } from "./problem.js";

const hosts = ["localhost", "127.0.0.1", "[::1]"];
const safeMethods = new Set(["GET", "HEAD", "OPTIONS"]);

/** The headers every reply carries; a route may set a stricter or different policy before. */
export const contentPolicy = (nonce?: string): string =>
  [
    "default-src 'none'",
    "script-src 'self'",
    // Styles set by script through the element's `style` object are not subject to this; style elements need the nonce.
    nonce === undefined ? "style-src 'self'" : `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' blob: data:",
    "connect-src 'self'",
    "font-src 'self'",
    "worker-src 'self'",
    "manifest-src 'self'",
    "frame-src 'self'",
    "frame-ancestors 'none'",
    "base-uri 'none'",
    "form-action 'self'",
  ].join("; ");

const fixedHeaders: readonly (readonly [string, string])[] = [
  ["X-Content-Type-Options", "nosniff"],
  ["Referrer-Policy", "no-referrer"],
  ["Cross-Origin-Opener-Policy", "same-origin"],
  ["Cross-Origin-Resource-Policy", "same-origin"],
  ["Permissions-Policy", "camera=(), microphone=(), geolocation=(), usb=(), payment=(), browsing-topics=()"],
];

/** Sets the headers on every reply, problems included. */
export const securityHeaders: MiddlewareHandler = async (c, next) => {
  await next();
  for (const [name, value] of fixedHeaders) c.res.headers.set(name, value);
  if (!c.res.headers.has("Content-Security-Policy")) c.res.headers.set("Content-Security-Policy", contentPolicy());
};

/** @param port the port the server listens on, asked at each request because it is known only once it listens. */
export const ownAddressOnly =
  (port: () => number): MiddlewareHandler =>
  async (c, next) => {
    const host = c.req.header("host") ?? "";
    if (!hosts.some((name) => host === `${name}:${port()}` || (port() === 80 && host === name)))
      throw new RequestProblem(403, "foreign-host", "problem.title.forbidden", say("problem.host"));
    const origin = c.req.header("origin");
    if (origin !== undefined && origin !== `http://${host}`)
      throw new RequestProblem(403, "foreign-origin", "problem.title.forbidden", say("problem.origin"));
    if (!safeMethods.has(c.req.method) && origin === undefined && c.req.header("x-stipule") !== "1")
      throw new RequestProblem(403, "origin-missing", "problem.title.forbidden", say("problem.no-origin"));
    await next();
  };
