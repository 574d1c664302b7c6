/** What a hostile or broken program may send: bodies without end, JSON that is deep or odd, paths that lead out, over a real socket. */
import { once } from "node:events";
import { mkdir, writeFile } from "node:fs/promises";
import { request } from "node:http";
import { createServer } from "node:net";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { problemDetails } from "../../src/contract/index.js";
import { serveBook } from "../../src/server/index.js";
import type { Running } from "../../src/server/index.js";
import { beginBook } from "../../src/store/index.js";
import type { DemoBench } from "../support/demo-bench.js";
import { openDemoBench, programRoot } from "../support/demo-bench.js";
import { smallJpeg } from "../support/odd-photos.js";
import { fixedClock, sampleContent, sampleInfo } from "../support/store-sample.js";
import { temporaryFolders } from "../support/temporary-folder.js";

const newFolder = temporaryFolders();
let demo: DemoBench;
beforeAll(async () => {
  demo = await openDemoBench();
});
afterAll(async () => {
  expect(demo.logged).toEqual([]);
  await demo.close();
});

const problemOf = async (response: Response): Promise<unknown[]> => {
  const problem = problemDetails.parse(await response.json());
  expect(problem.status).toBe(response.status);
  return [problem.status, problem.code];
};
const post = (body: RequestInit["body"], headers: Record<string, string> = {}, path = "/api/tables", method = "POST"): Promise<Response> =>
  demo.ask(path, {
    method,
    headers: { "content-type": "application/json", "x-stipule": "1", ...headers },
    body: body ?? null,
    ...(body instanceof ReadableStream ? { duplex: "half" } : {}),
  } as RequestInit);

describe("bodies of JSON", () => {
  it("that say they are larger than 60 MB are not read", async () => {
    let pulled = 0;
    const endless = new ReadableStream({
      pull: (controller) => {
        pulled += 1;
        controller.enqueue(new Uint8Array(1_000_000).fill(32));
      },
    });
    expect(await problemOf(await post(endless, { "content-length": "60000001" }))).toEqual([413, "body-too-large"]);
    // A stream asks for its first piece unbidden.
    expect(pulled).toBeLessThanOrEqual(1);
  });

  it("that never end are cut off at 60 MB", async () => {
    let sent = 0;
    const endless = new ReadableStream({
      pull: (controller) => {
        sent += 1;
        controller.enqueue(new Uint8Array(1_000_000).fill(32));
      },
    });
    expect(await problemOf(await post(endless))).toEqual([413, "body-too-large"]);
    expect(sent).toBeGreaterThanOrEqual(60);
    expect(sent).toBeLessThan(80);
  });

  it("that hold a text longer than its field are refused with the field named and the text not sent back", async () => {
    const response = await post(JSON.stringify({ csv: "x".repeat(50_000_001), tableId: "t", title: "T", keep: true }));
    const text = await response.text();
    expect(text.length).toBeLessThan(2000);
    const problem = problemDetails.parse(JSON.parse(text));
    expect([response.status, problem.code, problem.errors?.map((error) => error.pointer)]).toEqual([400, "invalid-request", ["/csv"]]);
  });

  it.each([
    ["deep lists", "[".repeat(200_000) + "]".repeat(200_000)],
    ["deep objects", '{"csv":'.repeat(100_000) + "1" + "}".repeat(100_000)],
    ["a deep list in a field", `{"csv":${"[".repeat(200_000)}${"]".repeat(200_000)},"tableId":"t","title":"T","keep":true}`],
    ["a list of a million", `[${"1,".repeat(999_999)}1]`],
    ["null", "null"],
    ["a number", "1e999"],
    ["nothing", ""],
    ["a prototype", '{"__proto__":{"keep":true},"constructor":{"prototype":{"csv":"x"}}}'],
    ["bytes that are no text", new Uint8Array([0xff, 0xfe, 0x00])],
  ])("of %s are a bad request, no fault of ours", async (_name, body) => {
    const [status, code] = await problemOf(await post(body));
    expect([status, ["invalid-request", "invalid-json"].includes(String(code))]).toEqual([400, true]);
    expect(({} as { keep?: unknown }).keep).toBeUndefined();
  });

  it("that break off are a bad request, no fault of ours", async () => {
    const broken = new ReadableStream({
      start: (controller) => controller.enqueue(new TextEncoder().encode('{"csv":"')),
      pull: (controller) => controller.error(new Error("socket hang up")),
    });
    expect(await problemOf(await post(broken))).toEqual([400, "invalid-json"]);
  });

  it("with 20,001 sheets are one too many", async () => {
    const ids = Array.from({ length: 20_001 }, (_, k) => k.toString(16).padStart(64, "0"));
    const [status, code] = await problemOf(await post(JSON.stringify({ ids, change: {} }), {}, "/api/sheets", "PATCH"));
    expect([status, code]).toEqual([400, "invalid-request"]);
  });
});

describe("over a real socket", () => {
  let running: Running;
  let folder = "";
  let photo = "";
  beforeAll(async () => {
    folder = join(newFolder(), "book");
    const store = await beginBook(folder, sampleInfo, { clock: fixedClock });
    await store.putContent(sampleContent(), { label: "sample" });
    await store.close();
    await mkdir(join(folder, "published", "page"), { recursive: true });
    await writeFile(join(folder, "published", "page", "index.html"), "<!doctype html><p>page");
    await writeFile(join(folder, "secret.txt"), "root: the secret");
    const free = createServer().listen(0, "127.0.0.1");
    await once(free, "listening");
    const { port } = free.address() as { port: number };
    await new Promise((resolve) => free.close(resolve));
    running = await serveBook({ folder, isDemo: false, port, programRoot, clock: fixedClock, tell: () => undefined });
    const jpeg = await smallJpeg(9, 100, 80);
    const brought = await fetch(`${running.url}/api/bring/a.jpg`, {
      method: "PUT",
      headers: { "content-type": "image/jpeg", "x-stipule": "1" },
      body: new Uint8Array(jpeg),
    });
    photo = ((await brought.json()) as { photoId: string }).photoId;
  });
  afterAll(() => running.stop());

  /** Asks for the path as it stands: no client of ours may tidy it up first. */
  const raw = (path: string): Promise<{ status: number; type: string; text: string }> =>
    new Promise((resolve, reject) => {
      const asked = request({ host: "127.0.0.1", port: running.port, path, headers: { host: `localhost:${running.port}` } }, (reply) => {
        let text = "";
        reply.setEncoding("latin1").on("data", (part: string) => (text += part));
        reply.on("end", () => resolve({ status: reply.statusCode ?? 0, type: reply.headers["content-type"] ?? "", text }));
      });
      asked.on("error", reject).end();
    });

  it("gives the page and the photograph that are there", async () => {
    expect(await raw("/published/page/")).toMatchObject({ status: 200, text: "<!doctype html><p>page" });
    for (const size of ["320", "2048", "original"])
      expect(await raw(`/image/${photo}/${size}`)).toMatchObject({ status: 200, type: "image/jpeg" });
  });

  it.each([
    "/published/../secret.txt",
    "/published/page/../../secret.txt",
    "/published/..%2fsecret.txt",
    "/published/%2e%2e%2fsecret.txt",
    "/published/%2e%2e/secret.txt",
    "/published/..%5csecret.txt",
    "/published/%252e%252e%252fsecret.txt",
    "/published/page/..;/..;/secret.txt",
    "/published/./../secret.txt",
    "/published//../../secret.txt",
    "/published/..%00/secret.txt",
    "/published/%c0%ae%c0%ae%c0%afsecret.txt",
    "/published/..%ef%bc%8fsecret.txt",
    "/image/../secret.txt",
    "/image/../../secret.txt",
    "/image/..%2f..%2fsecret.txt/original",
    "/image/..%2fsecret.txt/320",
    "/image/PHOTO/..%2f..%2fsecret.txt",
    "/image/PHOTO/../../../secret.txt",
    "/image/PHOTO%2f..%2f..%2fsecret.txt/original",
    "/image/PHOTO/original%00",
    "/image/PHOTO/original/../../../stipule.sqlite",
    "/image/PHOTO%00/original",
    "/image/stipule.sqlite/original",
    "/secret.txt",
    "/..%2f..%2fpackage.json",
    "/assets/../../../package.json",
    "/assets/..%2f..%2f..%2fpackage.json",
    "http://localhost/published/../secret.txt",
  ])("gives nothing outside the folders: %s", async (path) => {
    const reply = await raw(path.replaceAll("PHOTO", photo));
    // What no file answers is an address of the page: the page itself, or the word that it is not built.
    const isPage = [200, 503].includes(reply.status) && reply.type.startsWith("text/html");
    expect([isPage || [400, 403, 404].includes(reply.status), reply.status, reply.type]).toEqual([true, reply.status, reply.type]);
    expect(reply.text).not.toMatch(/the secret|SQLite format|"devDependencies"/);
  });

  it("answers on after a client that breaks off in the middle of a body", async () => {
    await new Promise<void>((resolve) => {
      const asked = request({
        host: "127.0.0.1",
        port: running.port,
        path: "/api/tables",
        method: "POST",
        headers: { host: `localhost:${running.port}`, "x-stipule": "1", "content-type": "application/json", "content-length": "1000000" },
      });
      asked.on("error", () => resolve());
      asked.on("close", () => resolve());
      asked.write('{"csv":"', () => asked.destroy());
    });
    expect((await raw("/api/book")).status).toBe(200);
  });
});
