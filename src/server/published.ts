/** Looking at published pages: /published/... from the book's own folder, under a policy of their own: no script at all. */
import type { Hono } from "hono";
import { say } from "../words/index.js";
import { RequestProblem } from "./problem.js";
import { fileBelow } from "./safe-path.js";
import { sendFile } from "./send-file.js";

const policy = [
  "default-src 'none'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data:",
  "font-src 'self' data:",
  // Our own page shows the preview in a frame; nobody else may.
  "frame-ancestors 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "sandbox allow-same-origin allow-popups allow-downloads",
].join("; ");

export const mountPublished = (app: Hono, publishedRoot: string): void => {
  app.get("/published/*", async (c) => {
    const urlPath = new URL(c.req.url).pathname.slice("/published/".length);
    const file = await fileBelow(publishedRoot, urlPath);
    if (file === undefined) throw new RequestProblem(404, "not-published", "problem.title.not-found", say("problem.not-published"));
    // Links in a page are relative to its folder, so the address of a folder ends in a slash.
    const isFolder = file.path.endsWith("index.html") && !urlPath.endsWith("index.html");
    if (isFolder && urlPath !== "" && !urlPath.endsWith("/")) return c.redirect(`/published/${urlPath}/`, 301);
    return sendFile(c, { ...file, headers: { "Cache-Control": "no-store", "Content-Security-Policy": policy } });
  });
};
