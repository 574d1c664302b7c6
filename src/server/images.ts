/** GET /image/{photoId}/{320|2048|original}: a photograph in a size. A photo's bytes never change, so replies are kept for good. */
import { stat } from "node:fs/promises";
import type { Hono } from "hono";
import type { Workbench } from "../app/index.js";
import { getSheet } from "../app/index.js";
import { photoId } from "../engine/index.js";
import type { PhotoId } from "../engine/index.js";
import { say } from "../words/index.js";
import { RequestProblem } from "./problem.js";
import { sendFile } from "./send-file.js";

/** Makes a missing derivative; may be called for the same one at the same time. */
export type EnsureDerivative = (id: PhotoId, size: 320 | 2048) => Promise<void>;

const sizes = { "320": 320, "2048": 2048 } as const;
const forGood = "private, max-age=31536000, immutable";

/**
 * The name a file is saved under (RFC 6266): an ASCII stand-in for old readers and the whole name in UTF-8 (RFC 8187).
 * Path separators and control characters never pass.
 */
export const attachmentName = (fileName: string): string => {
  const kept = fileName.replaceAll(/[/\\]|\p{Cc}|\p{Surrogate}/gu, "_").slice(-200);
  // Cutting may have split a pair of surrogates, which no encoding can carry.
  const clean = kept.replaceAll(/\p{Surrogate}/gu, "_") || "photo";
  const ascii = clean.replaceAll(/[^\x20-\x7e]/g, "_").replaceAll(/["%]/g, "_");
  const encoded = encodeURIComponent(clean).replaceAll(/['()*]/g, (mark) => `%${mark.charCodeAt(0).toString(16).toUpperCase()}`);
  return `attachment; filename="${ascii}"; filename*=UTF-8''${encoded}`;
};

const missing = (path: string): RequestProblem =>
  new RequestProblem(404, "not-here", "problem.title.not-found", say("problem.no-route", { path }));

export const mountImages = (app: Hono, workbench: Workbench, ensure: EnsureDerivative): void => {
  app.get("/image/:id/:size", async (c) => {
    const id = photoId.safeParse(c.req.param("id"));
    const wanted = c.req.param("size");
    if (!id.success) throw missing(c.req.path);
    const { files } = workbench.store;
    const etag = `"${id.data}-${wanted}"`;
    if (wanted === "original") {
      const photo = await getSheet(workbench, id.data);
      if (!(await files.hasOriginal(id.data))) throw missing(c.req.path);
      const path = files.originalPath(id.data);
      const headers = { "Cache-Control": forGood, "Content-Disposition": attachmentName(photo.fileName) };
      return sendFile(c, { path, size: (await stat(path)).size, etag, type: `image/${photo.format}`, headers });
    }
    if (wanted !== "320" && wanted !== "2048") throw missing(c.req.path);
    const size = sizes[wanted];
    if (!(await files.hasDerivative(id.data, size))) {
      await getSheet(workbench, id.data);
      await ensure(id.data, size);
    }
    const path = files.derivativePath(id.data, size);
    return sendFile(c, { path, size: (await stat(path)).size, etag, type: "image/jpeg", headers: { "Cache-Control": forGood } });
  });
};
