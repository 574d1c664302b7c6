import { mkdir, symlink, writeFile } from "node:fs/promises";
import { join } from "node:path";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { BroughtFile } from "../../src/contract/index.js";
import type { DemoBench } from "../support/demo-bench.js";
import { openDemoBench } from "../support/demo-bench.js";

let demo: DemoBench;
let jpeg: Uint8Array<ArrayBuffer>;
let id = "";
const name = "Weidenröschen “V1” 100%.jpg";

const bring = (fileName: string, body: Uint8Array<ArrayBuffer> | ReadableStream, headers: Record<string, string> = {}): Promise<Response> =>
  demo.ask(`/api/bring/${encodeURIComponent(fileName)}`, {
    method: "PUT",
    headers: {
      "content-type": "image/jpeg",
      "x-stipule": "1",
      ...(body instanceof Uint8Array ? { "content-length": String(body.byteLength) } : {}),
      ...headers,
    },
    body,
    ...(body instanceof Uint8Array ? {} : { duplex: "half" }),
  } as RequestInit);

beforeAll(async () => {
  const webRoot = join(await import("node:os").then((os) => os.tmpdir()), `stipule-web-${process.pid}`);
  await mkdir(join(webRoot, "assets"), { recursive: true });
  await writeFile(join(webRoot, "index.html"), "<!doctype html><html><head><title>x</title></head><body></body></html>");
  await writeFile(join(webRoot, "assets", "main-abc123.js"), "export {};");
  await writeFile(join(webRoot, "..", `stipule-secret-${process.pid}.txt`), "secret");
  demo = await openDemoBench(webRoot);
  const made = await sharp({ create: { width: 640, height: 480, channels: 3, background: "#4a7" } })
    .jpeg()
    .toBuffer();
  jpeg = new Uint8Array(made);
  const response = await bring(name, jpeg);
  const outcome = (await response.json()) as BroughtFile;
  expect([response.status, outcome.outcome, outcome.fileName]).toEqual([200, "new", name]);
  id = outcome.photoId ?? "";
}, 120_000);
afterAll(async () => {
  expect(demo.logged).toEqual([]);
  await demo.close();
});

const codeOf = async (response: Response): Promise<unknown[]> => [response.status, ((await response.json()) as { code: string }).code];

describe("bringing a file", () => {
  it("knows the same file again and keeps one", async () => {
    expect((await (await bring("copy.jpg", jpeg)).json()) as BroughtFile).toMatchObject({ outcome: "already-here", photoId: id });
    expect(await demo.bench.workbench.store.list("photo")).toHaveLength(1);
  });

  it("refuses what is no photograph, by its content, and leaves nothing behind", async () => {
    const outcome = (await (await bring("notes.jpg", new TextEncoder().encode("no picture"))).json()) as BroughtFile;
    expect([outcome.outcome, outcome.photoId]).toEqual(["refused", null]);
    expect(outcome.text).toBeTruthy();
    expect(await demo.bench.workbench.store.list("photo")).toHaveLength(1);
  });

  it("names a file that was cut short on its way, and does not keep it", async () => {
    const cut = jpeg.slice(0, jpeg.length - 500);
    expect(await codeOf(await bring("cut.jpg", cut, { "content-length": String(jpeg.length) }))).toEqual([400, "upload-cut-short"]);
    expect(await demo.bench.workbench.store.list("photo")).toHaveLength(1);
  });

  it("names a connection that broke", async () => {
    const broken = new ReadableStream({
      pull(controller) {
        controller.enqueue(jpeg.slice(0, 1000));
        controller.error(new Error("socket hang up"));
      },
    });
    expect(await codeOf(await bring("broken.jpg", broken, { "content-length": String(jpeg.length) }))).toEqual([400, "upload-cut-short"]);
  });

  it("wants a length, a limit and a media type", async () => {
    const endless = new ReadableStream({ start: (controller) => controller.close() });
    expect(await codeOf(await bring("a.jpg", endless))).toEqual([411, "length-missing"]);
    expect(await codeOf(await bring("a.jpg", jpeg, { "content-length": "500000001" }))).toEqual([413, "upload-too-large"]);
    expect(await codeOf(await bring("a.jpg", jpeg, { "content-type": "text/html" }))).toEqual([415, "media-type"]);
  });

  it("keeps a name with path separators as text only", async () => {
    const other = new Uint8Array(
      await sharp({ create: { width: 40, height: 30, channels: 3, background: "#a47" } })
        .jpeg()
        .toBuffer(),
    );
    const outcome = (await (await bring("../../etc/passwd", other)).json()) as BroughtFile;
    expect(outcome.outcome).toBe("new");
    expect((await demo.bench.workbench.store.get("photo", outcome.photoId!))?.fileName).toBe("../../etc/passwd");
    const sent = await demo.ask(`/image/${outcome.photoId}/original`);
    expect(sent.headers.get("content-disposition")).toBe("attachment; filename=\".._.._etc_passwd\"; filename*=UTF-8''.._.._etc_passwd");
  });
});

describe("images", () => {
  it("sends an original as it was, under its own name", async () => {
    const response = await demo.ask(`/image/${id}/original`);
    expect(response.headers.get("content-type")).toBe("image/jpeg");
    expect(response.headers.get("cache-control")).toContain("immutable");
    // RFC 8187, section 3.2.1: only attr-char stands unescaped in the extended value.
    expect(response.headers.get("content-disposition")).toBe(
      `attachment; filename="Weidenr_schen _V1_ 100_.jpg"; filename*=UTF-8''Weidenr%C3%B6schen%20%E2%80%9CV1%E2%80%9D%20100%25.jpg`,
    );
    expect(new Uint8Array(await response.arrayBuffer())).toEqual(jpeg);
  });

  it("makes a small copy that is missing, once for several that ask", async () => {
    const { rm } = await import("node:fs/promises");
    const { files } = demo.bench.workbench.store;
    await rm(files.derivativePath(id as never, 320));
    const replies = await Promise.all([1, 2, 3].map(() => demo.ask(`/image/${id}/320`)));
    expect(replies.map((reply) => reply.status)).toEqual([200, 200, 200]);
    const meta = await sharp(Buffer.from(await replies[0]!.arrayBuffer())).metadata();
    expect([meta.format, meta.width, meta.height]).toEqual(["jpeg", 320, 240]);
    await Promise.all(replies.slice(1).map((reply) => reply.arrayBuffer()));
  });

  it("answers HEAD, a known tag, and parts", async () => {
    const path = `/image/${id}/original`;
    const head = await demo.ask(path, { method: "HEAD" });
    expect([head.status, head.headers.get("content-length"), await head.text()]).toEqual([200, String(jpeg.length), ""]);
    const etag = head.headers.get("etag")!;
    expect(etag).toBe(`"${id}-original"`);
    expect((await demo.ask(path, { headers: { "if-none-match": `"other", W/${etag}` } })).status).toBe(304);

    const part = async (range: string, more: Record<string, string> = {}) => {
      const response = await demo.ask(path, { headers: { range, ...more } });
      return [response.status, response.headers.get("content-range"), (await response.arrayBuffer()).byteLength];
    };
    const n = jpeg.length;
    expect(await part("bytes=0-9")).toEqual([206, `bytes 0-9/${n}`, 10]);
    expect(await part("bytes=10-")).toEqual([206, `bytes 10-${n - 1}/${n}`, n - 10]);
    expect(await part("bytes=-5")).toEqual([206, `bytes ${n - 5}-${n - 1}/${n}`, 5]);
    expect(await part(`bytes=0-${n * 2}`)).toEqual([206, `bytes 0-${n - 1}/${n}`, n]);
    expect((await part(`bytes=${n}-`)).slice(0, 2)).toEqual([416, `bytes */${n}`]);
    expect((await part("bytes=-0")).slice(0, 2)).toEqual([416, `bytes */${n}`]);
    // Malformed, of another unit, or several: the whole (RFC 9110, section 14.2).
    for (const range of ["bytes=9-0", "items=0-1", "bytes=0-1,5-6", "bytes=-"]) expect(await part(range)).toEqual([200, null, n]);
    expect(await part("bytes=0-9", { "if-range": '"other"' })).toEqual([200, null, n]);
    expect((await part("bytes=0-9", { "if-range": etag }))[0]).toBe(206);
  });

  it.each(["zz/320", `${"0".repeat(64)}/320`, `${"0".repeat(64)}/original`, "ID/640", "ID/..%2foriginal"])("has no %s", async (path) => {
    expect((await demo.ask(`/image/${path.replace("ID", id)}`)).status).toBe(404);
  });
});

describe("the page and published pages", () => {
  it("gives index.html for every address of the page, with a fresh nonce for styles", async () => {
    const [a, b] = [await demo.ask("/"), await demo.ask("/plants/P1/case")];
    const nonces = [a, b].map((reply) => /'nonce-([^']+)'/.exec(reply.headers.get("content-security-policy") ?? "")?.[1]);
    expect(nonces[0]).toBeTruthy();
    expect(nonces[0]).not.toBe(nonces[1]);
    expect(await a.text()).toContain(`<meta property="csp-nonce" nonce="${nonces[0]}">`);
  });

  it("keeps hashed assets for good and misses what is not there", async () => {
    const asset = await demo.ask("/assets/main-abc123.js");
    expect([asset.status, asset.headers.get("cache-control")]).toEqual([200, "public, max-age=31536000, immutable"]);
    expect((await demo.ask("/assets/gone.js")).status).toBe(404);
  });

  it("shows published pages under a policy of their own, and nothing outside their folder", async () => {
    const root = join(demo.folder, "published");
    await mkdir(join(root, "obscurum"), { recursive: true });
    await writeFile(join(root, "obscurum", "index.html"), "<!doctype html><p>page");
    await symlink(demo.folder, join(root, "link"));
    const page = await demo.ask("/published/obscurum/");
    expect([page.status, await page.text()]).toEqual([200, "<!doctype html><p>page"]);
    expect(page.headers.get("content-security-policy")).toContain("frame-ancestors 'self'");
    expect(page.headers.get("content-security-policy")).not.toContain("script-src");
    const bare = await demo.ask("/published/obscurum");
    expect([bare.status, bare.headers.get("location")]).toEqual([301, "/published/obscurum/"]);
    expect((await demo.ask("/published/link/stipule.sqlite")).status).toBe(404);
  });

  it.each([
    "../stipule.sqlite",
    "..%2fstipule.sqlite",
    "%2e%2e/stipule.sqlite",
    "%2e%2e%2fstipule.sqlite",
    "..%5cstipule.sqlite",
    "obscurum/..%2f..%2fstipule.sqlite",
    "obscurum%00.html",
    "%00",
    "C:%5cWindows%5cwin.ini",
    "C:/Windows/win.ini",
    "%5c%5cserver%5cshare",
    "nul",
    "con.html",
    "obscurum.",
    "obscurum%20/",
    ".hidden",
    "%c0%ae%c0%ae/stipule.sqlite",
    "%ff",
    "//etc/passwd",
    "%2fetc%2fpasswd",
  ])("never leaves its folder: /published/%s", async (path) => {
    const response = await demo.ask(`/published/${path}`);
    // A path that the URL itself resolves to above /published is an address of the page, which is index.html.
    expect([404, response.headers.get("content-type")?.startsWith("text/html") === true ? 200 : 404]).toContain(response.status);
    expect(await response.text()).not.toMatch(/SQLite|root:|\[fonts\]/);
  });

  const secret = `stipule-secret-${process.pid}.txt`;
  it.each([`/..%2f${secret}`, `/assets/..%2f..%2f${secret}`, `/%2e%2e%2f${secret}`, `/assets/..%5c..%5c${secret}`, "/assets/%00.js"])(
    "never leaves the folder of the page: %s",
    async (path) => {
      expect((await demo.ask(path)).status).toBe(404);
    },
  );
});
