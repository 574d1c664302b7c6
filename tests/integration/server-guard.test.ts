import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { DemoBench } from "../support/demo-bench.js";
import { openDemoBench } from "../support/demo-bench.js";

let demo: DemoBench;
beforeAll(async () => {
  demo = await openDemoBench();
}, 120_000);
afterAll(() => demo.close());

const code = async (response: Response): Promise<string> => ((await response.json()) as { code: string }).code;

describe("who may ask", () => {
  it.each(["localhost:4810", "127.0.0.1:4810", "[::1]:4810"])("answers under its own name %s", async (host) => {
    expect((await demo.ask("/api/book", { host })).status).toBe(200);
  });

  it.each(["evil.example", "evil.example:4810", "localhost", "localhost:4811", "localhost:4810.evil.example", ""])(
    "refuses the foreign host “%s”, for the page and the interface alike",
    async (host) => {
      for (const path of ["/api/book", "/", "/image/x/320"]) {
        const response = await demo.ask(path, { host });
        expect(response.status).toBe(403);
        expect(await code(response)).toBe("foreign-host");
      }
    },
  );

  it.each(["http://evil.example", "null", "https://localhost:4810", "http://127.0.0.1:4810"])(
    "refuses the foreign origin %s",
    async (origin) => {
      const response = await demo.ask("/api/undo", { method: "POST", headers: { origin } });
      expect(response.status).toBe(403);
      expect(await code(response)).toBe("foreign-origin");
    },
  );

  it("refuses a change that neither our page nor a program sent, and takes it with the header", async () => {
    const bare = await demo.ask("/api/redo", { method: "POST" });
    expect([bare.status, await code(bare)]).toEqual([403, "origin-missing"]);
    expect((await demo.ask("/api/redo", { method: "POST", headers: { "x-stipule": "1" } })).status).toBe(200);
  });

  it.each(["text/plain", "application/x-www-form-urlencoded", "multipart/form-data"])("refuses a form's content type %s", async (type) => {
    const response = await demo.ask("/api/sheets", {
      method: "PATCH",
      headers: { "content-type": type, origin: "http://localhost:4810" },
      body: "{}",
    });
    expect([response.status, await code(response)]).toEqual([415, "media-type"]);
  });
});

describe("what a browser may do with a reply", () => {
  it("carries the headers on replies and on problems", async () => {
    for (const path of ["/api/book", "/api/nowhere"]) {
      const { headers } = await demo.ask(path);
      const policy = headers.get("content-security-policy") ?? "";
      for (const part of ["default-src 'none'", "script-src 'self'", "frame-ancestors 'none'", "base-uri 'none'", "form-action 'self'"])
        expect(policy).toContain(part);
      expect(policy).not.toContain("unsafe");
      expect(headers.get("x-content-type-options")).toBe("nosniff");
      expect(headers.get("referrer-policy")).toBe("no-referrer");
      expect(headers.get("cross-origin-opener-policy")).toBe("same-origin");
      expect(headers.get("permissions-policy")).toContain("camera=()");
      expect(headers.get("access-control-allow-origin")).toBeNull();
    }
  });

  it("says what to do when the page was not built", async () => {
    const response = await demo.ask("/plants/P1");
    expect(response.status).toBe(503);
    expect(await response.text()).toContain("npm start");
  });
});
