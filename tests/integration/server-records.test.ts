import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { api, problemDetails } from "../../src/contract/index.js";
import type { ProblemDetails } from "../../src/contract/index.js";
import type { DemoBench } from "../support/demo-bench.js";
import { openDemoBench, programRoot } from "../support/demo-bench.js";

let demo: DemoBench;
beforeAll(async () => {
  demo = await openDemoBench();
}, 120_000);
afterAll(async () => {
  expect(demo.logged).toEqual([]);
  await demo.close();
});

const json = async <T>(response: Response | Promise<Response>): Promise<T> => (await (await response).json()) as T;
/** The problem of a reply, checked against the contract. */
const problem = async (response: Response): Promise<ProblemDetails> => {
  expect(response.headers.get("content-type")).toContain("application/problem+json");
  const body = problemDetails.parse(await response.json());
  expect(body.status).toBe(response.status);
  expect(body.type).toBe(`/problems/${body.code}`);
  return body;
};

const look = {
  id: "look-1",
  plantId: "P6",
  outingId: "V9",
  characterId: "stem_lines",
  date: "2022-11-06",
  status: "seen",
  states: ["four"],
};
const outingV9 = (): string =>
  (JSON.parse(readFileSync(join(programRoot, "demo/hobbin-carr.json"), "utf8")) as { visits: { id: string; date: string }[] }).visits.find(
    (visit) => visit.id === "V9",
  )!.date;

describe("every reading route", () => {
  const ids: Readonly<Record<string, string>> = { plantId: "P1", tableId: "willowherbs" };
  const reading = Object.keys(api).filter((name) => name.startsWith("GET ") && !/\{(photoId|taxonId)\}/.test(name));
  it.each(reading)("%s replies by the contract on the demo year", async (name) => {
    const path = name.slice(4).replaceAll(/\{(\w+)\}/g, (_, key: string) => ids[key] ?? "x");
    const response = await demo.ask(path.endsWith("/apart") ? `${path}?taxa=obscurum,tetragonum` : path);
    expect([name, response.status, response.status === 200 ? "" : await response.text()]).toEqual([name, 200, ""]);
  });
});

describe("a request that is not as it should be", () => {
  it("names the field, the value and what was wanted", async () => {
    const response = await demo.send("PUT", "/api/looks/look-1", { ...look, date: "2022-02-30", status: "glimpsed" });
    const found = await problem(response);
    expect([found.status, found.code]).toEqual([400, "invalid-request"]);
    expect(found.errors).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ pointer: "/date", value: "2022-02-30" }),
        expect.objectContaining({ pointer: "/status", value: "glimpsed" }),
      ]),
    );
    expect(found.remedy).toBeTruthy();
  });

  it("names a bad day in the address", async () => {
    const found = await problem(await demo.ask("/api/plants?upTo=yesterday"));
    expect(found.errors?.[0]).toMatchObject({ pointer: "/query/upTo", value: "yesterday" });
  });

  it("takes no broken JSON", async () => {
    const response = await demo.ask("/api/looks/look-1", {
      method: "PUT",
      headers: { "content-type": "application/json", "x-stipule": "1" },
      body: "{",
    });
    expect((await problem(response)).code).toBe("invalid-json");
  });

  it("says that nothing is at an unknown address", async () => {
    expect(await problem(await demo.ask("/api/nowhere"))).toMatchObject({ status: 404, code: "not-here" });
  });

  it("says which record is not in the book", async () => {
    expect(await problem(await demo.ask("/api/plants/P77"))).toMatchObject({ status: 404, code: "not-in-book" });
    expect(await problem(await demo.send("DELETE", "/api/looks/no-such-look", undefined))).toMatchObject({ status: 404 });
    expect(await problem(await demo.send("DELETE", "/api/jobs/no-such-job", undefined))).toMatchObject({ status: 404 });
  });
});

describe("writing records", () => {
  const good = { ...look, date: outingV9() };

  it("keeps one of two that are the same, makes one edit, and takes it back", async () => {
    const before = await json<{ edits: { id: number }[] }>(demo.ask("/api/history"));
    const first = await json<{ edit: { id: number; undoable: boolean } }>(demo.send("PUT", "/api/looks/look-1", good));
    expect(first.edit.undoable).toBe(true);
    const again = await json<{ edit: { rowCount: number; undoable: boolean } }>(demo.send("PUT", "/api/looks/look-1", good));
    expect(again.edit).toMatchObject({ rowCount: 0, undoable: false });
    const after = await json<{ edits: { id: number }[] }>(demo.ask("/api/history"));
    expect(after.edits.length).toBe(before.edits.length + 1);
    const page = await json<{ looks: { id: string }[] }>(demo.ask("/api/plants/P6"));
    expect(page.looks.filter(({ id }) => id === "look-1")).toHaveLength(1);

    const undone = await json<{ edit: { id: number; state: string } }>(demo.send("POST", "/api/undo", undefined));
    expect(undone.edit).toMatchObject({ id: first.edit.id, state: "undone" });
    expect((await json<{ looks: { id: string }[] }>(demo.ask("/api/plants/P6"))).looks.some(({ id }) => id === "look-1")).toBe(false);
    const overview = await json<{ redo: string | null }>(demo.ask("/api/book"));
    expect(overview.redo).toContain("look");
    expect((await demo.send("POST", "/api/redo", undefined)).status).toBe(200);
    expect((await json<{ looks: { id: string }[] }>(demo.ask("/api/plants/P6"))).looks.some(({ id }) => id === "look-1")).toBe(true);
    await demo.send("POST", "/api/undo", undefined);
  });

  it.each([
    ["another day than its outing's", { date: "2022-06-01" }, "/date"],
    ["a character the table has not", { characterId: "no_such" }, "/characterId"],
    ["a state the character has not", { states: ["seven"] }, "/states/0"],
    ["a plant that is not there", { plantId: "P99" }, "/plantId"],
    ["an outing that is not there", { outingId: "V99" }, "/outingId"],
    ["a measured character", { characterId: "leaf_len" }, "/characterId"],
    ["a photograph that is not there", { photoIds: ["0".repeat(64)] }, "/photoIds/0"],
  ])("refuses a look with %s and keeps nothing", async (_what, change, pointer) => {
    const found = await problem(await demo.send("PUT", "/api/looks/look-bad", { ...good, id: "look-bad", ...change }));
    expect([found.status, found.code]).toEqual([422, "record-refused"]);
    expect(found.errors?.map((fault) => fault.pointer)).toContain(pointer);
    expect(found.kept).toBeTruthy();
    expect(await demo.bench.workbench.store.get("look", "look-bad")).toBeUndefined();
  });

  it("refuses a record whose id differs from the address", async () => {
    expect(await problem(await demo.send("PUT", "/api/looks/other", good))).toMatchObject({ code: "id-differs" });
  });

  it("asks about 5.1 and 4.8 mm among capsules, and keeps them when they are confirmed", async () => {
    const reading = {
      id: "r-1",
      plantId: "P1",
      outingId: "V7",
      characterId: "capsule_len",
      date: "2022-08-21",
      unit: "mm",
      values: [5.1, 4.8],
    };
    const asked = await problem(await demo.send("PUT", "/api/readings/r-1", { reading }));
    expect(asked.status).toBe(409);
    expect(asked.questions?.[0]).toMatchObject({ code: "another-unit" });
    expect(asked.questions?.[0]?.text).toContain("centimetres?");
    expect(await demo.bench.workbench.store.get("reading", "r-1")).toBeUndefined();
    expect((await demo.send("PUT", "/api/readings/r-1", { reading, confirmed: true })).status).toBe(200);
    await demo.send("POST", "/api/undo", undefined);
  });

  it("refuses to remove a plant with evidence and says what uses it", async () => {
    const found = await problem(await demo.send("DELETE", "/api/plants/P1", undefined));
    expect([found.status, found.code]).toEqual([409, "record-in-use"]);
  });

  it("moves what was seen along when an outing gets another day", async () => {
    const outing = (await demo.bench.workbench.store.get("outing", "V4"))!;
    expect((await demo.send("PUT", "/api/outings/V4", { ...outing, date: "2022-06-20" })).status).toBe(200);
    const looks = (await demo.bench.workbench.store.list("look")).filter((one) => one.outingId === "V4");
    expect(looks.length).toBeGreaterThan(0);
    expect(new Set(looks.map((one) => one.date))).toEqual(new Set(["2022-06-20"]));
    const stop = (await demo.bench.workbench.store.list("stop")).find((one) => one.outingId === "V4");
    expect(stop?.from.slice(0, 10)).toBe("2022-06-20");
    await demo.send("POST", "/api/undo", undefined);
    expect((await demo.bench.workbench.store.get("outing", "V4"))?.date).toBe(outing.date);
  });
});

describe("rules of the trade", () => {
  it("refuses to publish as measured what is said to be sensitive", async () => {
    const spot = (await demo.bench.workbench.store.list("spot"))[0]!;
    const body = { ...spot, sensitiveBecause: "few plants", publishAs: "as-measured" };
    const found = await problem(await demo.send("PUT", `/api/spots/${spot.id}`, body));
    expect([found.code, found.errors?.[0]?.pointer]).toEqual(["record-refused", "/publishAs"]);
  });

  const voucher = { id: "vo-1", number: "X 1", plantId: "P5", date: "2022-08-21", stemsInPatch: 9, stemsTaken: 1 };

  it("refuses a stem out of nine by the 1-in-20 rule", async () => {
    const found = await problem(await demo.send("PUT", "/api/vouchers/vo-1", voucher));
    expect([found.code, found.errors?.[0]?.pointer]).toEqual(["voucher-refused", "/stemsTaken"]);
    expect(found.detail).toContain("one in twenty allows 0");
  });

  it("refuses any at the fen corner by its permission", async () => {
    const found = await problem(await demo.send("PUT", "/api/vouchers/vo-1", { ...voucher, plantId: "P4", stemsInPatch: 60 }));
    expect(found.errors?.some((fault) => fault.detail.includes("forbids"))).toBe(true);
  });

  it("allows one of twenty, refuses one of nineteen, and keeps a refusal that was noted", async () => {
    const at = (stemsInPatch: number) => demo.send("PUT", "/api/vouchers/vo-1", { ...voucher, plantId: "P3", stemsInPatch });
    expect((await at(19)).status).toBe(422);
    expect((await at(20)).status).toBe(200);
    await demo.send("POST", "/api/undo", undefined);
    const noted = await demo.send("PUT", "/api/vouchers/vo-1", { ...voucher, stemsTaken: 0, refusedBecause: "9 stems" });
    expect(noted.status).toBe(200);
    await demo.send("POST", "/api/undo", undefined);
  });

  it("counts what was taken of the plant in the same year, and not the voucher itself", async () => {
    // One stem of P1 was taken in September 2022.
    const next = { ...voucher, id: "vo-2", plantId: "P1", date: "2022-10-02", stemsInPatch: 39 };
    const found = await problem(await demo.send("PUT", "/api/vouchers/vo-2", next));
    expect(found.detail).toContain(
      "one in twenty allows 1 (Wagner 1995, Botanical Electronic News 180), one was taken this year already, and 1 was",
    );
    expect((await demo.send("PUT", "/api/vouchers/vo-2", { ...next, stemsInPatch: 40 })).status).toBe(200);
    expect((await demo.send("PUT", "/api/vouchers/vo-2", { ...next, stemsInPatch: 40, parts: "capsules" })).status).toBe(200);
    await demo.send("POST", "/api/undo", undefined);
    await demo.send("POST", "/api/undo", undefined);
  });

  const slip = { id: "sl-1", plantId: "P5", on: "2022-11-10", by: "T.M.W.", name: "Epilobium obscurum", taxonIds: ["obscurum"] };

  it("takes a plain name on a plant nothing fits only with a question mark or a reason of one's own", async () => {
    const found = await problem(await demo.send("PUT", "/api/slips/sl-1", { ...slip, why: "looks so" }));
    expect(found.code).toBe("slip-against-case");
    expect((await demo.send("PUT", "/api/slips/sl-1", { ...slip, why: "looks so", qualifier: "?" })).status).toBe(200);
    await demo.send("POST", "/api/undo", undefined);
    const own = await demo.send("PUT", "/api/slips/sl-1", { ...slip, why: "referee counted the chromosomes and is sure" });
    expect(own.status).toBe(200);
  });

  it("never writes a slip over, but marks it as overturned", async () => {
    const why = "referee counted the chromosomes and is sure";
    const over = await problem(await demo.send("PUT", "/api/slips/sl-1", { ...slip, name: "Epilobium ciliatum", why }));
    expect(over.errors?.[0]?.pointer).toBe("/id");
    expect((await demo.send("PUT", "/api/slips/sl-1", { ...slip, why, overturned: true })).status).toBe(200);
  });
});

describe("the interface described", () => {
  it("is an OpenAPI 3.1 document with every route", async () => {
    const document = await json<{ openapi: string; paths: Record<string, Record<string, { responses: object; summary: string }>> }>(
      demo.ask("/api/openapi.json"),
    );
    expect(document.openapi).toMatch(/^3\.1\./);
    const described = Object.entries(document.paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
    );
    expect(described.sort()).toEqual(Object.keys(api).sort());
    for (const methods of Object.values(document.paths))
      for (const operation of Object.values(methods)) expect(operation.responses).toHaveProperty("default");
    const names = Object.values(document.paths).flatMap((methods) =>
      Object.values(methods).map((operation) => (operation as unknown as { operationId: string }).operationId),
    );
    expect(new Set(names).size).toBe(names.length);
  });
});
