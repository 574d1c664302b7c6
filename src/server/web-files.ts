/** The page itself from the folder it was built into; for every address of the page the same index.html. */
import { randomBytes } from "node:crypto";
import { readFile } from "node:fs/promises";
import path from "node:path";
import type { Context, Hono } from "hono";
import { say } from "../words/index.js";
import { contentPolicy } from "./guard.js";
import { RequestProblem } from "./problem.js";
import { fileBelow } from "./safe-path.js";
import { sendFile } from "./send-file.js";

const escape = (text: string): string => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");

/** A page of plain words, without any script. */
export const plainPage = (title: string, text: string): string =>
  `<!doctype html><html lang="en"><meta charset="utf-8"><title>${escape(title)}</title><h1>${escape(title)}</h1><p>${escape(text)}</p></html>\n`;

const page = (c: Context, html: string, status: 200 | 404 | 503, nonce?: string): Response =>
  c.body(html, status, {
    "Content-Type": "text/html; charset=utf-8",
    "Cache-Control": "no-store",
    "Content-Security-Policy": contentPolicy(nonce),
  });

/** index.html with a fresh nonce: libraries that add a style element look for it in a meta element of this name. */
const indexPage = async (c: Context, webRoot: string): Promise<Response> => {
  let html: string;
  try {
    html = await readFile(path.join(webRoot, "index.html"), "utf8");
  } catch (error) {
    if (!(error instanceof Error && "code" in error && error.code === "ENOENT")) throw error;
    return page(c, plainPage(say("web.not-built-title"), say("web.not-built")), 503);
  }
  const nonce = randomBytes(18).toString("base64");
  return page(c, html.replace(/<head>/i, `<head><meta property="csp-nonce" nonce="${nonce}">`), 200, nonce);
};

export const mountWebFiles = (app: Hono, webRoot: string): void => {
  app.get("/problems/:code", (c) => {
    const code = c.req.param("code").slice(0, 80);
    return page(c, plainPage(say("problem.page", { code }), say("problem.page-text")), 200);
  });
  app.get("*", async (c) => {
    const urlPath = new URL(c.req.url).pathname;
    if (/^\/(api|image|published)(\/|$)/.test(urlPath))
      throw new RequestProblem(404, "not-here", "problem.title.not-found", say("problem.no-route", { path: urlPath }));
    const last = urlPath.split("/").at(-1) ?? "";
    if (!last.includes(".") || last === "index.html") return indexPage(c, webRoot);
    const file = await fileBelow(webRoot, urlPath);
    if (file === undefined)
      throw new RequestProblem(404, "not-here", "problem.title.not-found", say("problem.no-route", { path: urlPath }));
    // The builder puts a hash of the content into the names below /assets; the others are asked for each time.
    const keep = urlPath.startsWith("/assets/") ? "public, max-age=31536000, immutable" : "no-cache";
    return sendFile(c, { ...file, headers: { "Cache-Control": keep } });
  });
};
