/** Reference tables from odd CSV files, on the command line and as the page sends them: all or nothing, and the row is named. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { TableReport } from "../../src/contract/index.js";
import { referenceTable } from "../../src/engine/index.js";
import type { ReferenceTable, TableId } from "../../src/engine/index.js";
import { createJobs, openWorkbench, starterTables } from "../../src/app/index.js";
import { createServer } from "../../src/server/index.js";
import { fixedClock, programRoot } from "../support/demo-bench.js";
import { commandLine, jsonOf } from "../support/run-cli.js";
import { temporaryFolders } from "../support/temporary-folder.js";

const newFolder = temporaryFolders();
let home = "";
let book = "";
let stipule: ReturnType<typeof commandLine>;
beforeAll(async () => {
  home = newFolder();
  book = join(home, "book");
  stipule = commandLine(home);
  expect((await stipule("begin", book)).rc).toBe(0);
});

const latin1 = (text: string): Buffer => Buffer.from(text, "latin1");
const utf16 = (text: string): Buffer => Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(text, "utf16le")]);
const good = "taxon,flower colour,petal (mm)\nA. alba,white,3-5\nB. rosea,red,8-9\n";

/** Name, the file, and code and place of a problem that must be named. */
const bad: readonly (readonly [string, string | Buffer, string, string])[] = [
  ["wrong columns", "species,flower colour\nA. alba,white\n", "no-taxon-column", "row 1, column 1"],
  ["a column twice", "taxon,petal (mm),petal (mm)\nA. alba,3,4\n", "column-twice", "row 1, column 3"],
  ["a column without a name", "taxon,,petal (mm)\nA. alba,white,3\n", "column-without-name", "row 1, column 2"],
  ["a cell too many", "taxon,flower colour\nA. alba,white,3\n", "too-many-cells", "row 2"],
  ["a taxon twice", `${good}A. alba,red,\n`, "taxon-twice", "row 4"],
  ["a taxon twice but for case", `${good}a. ALBA,red,\n`, "taxon-twice", "row 4"],
  [
    "a state that is not one of the list",
    "taxon,flower colour\n#kind,states\n#states,red | white\nA. alba,white\nB. rosea,blue\n",
    "unknown-state",
    "row 5, column flower colour",
  ],
  ["a formula in a measured cell", "taxon,petal (mm)\nA. alba,=SUM(B2:B9)\n", "formula", "row 2, column petal (mm)"],
  [
    "a formula in a cell of states",
    'taxon,colour\nA. alba,"=HYPERLINK(""http://x.example"",""white"")"\n',
    "formula",
    "row 2, column colour",
  ],
  ["a formula for a taxon", "taxon,colour\n=A1,white\n", "formula", "row 2, column taxon"],
  ["Latin-1", latin1("taxon,Blütenfarbe\nA. alba,weiß\n"), "wrong-encoding", "the file"],
  ["Latin-1 far down", latin1(`${good}C. müelleri,red,8\n`), "wrong-encoding", "the file"],
  ["UTF-16", utf16(good), "wrong-encoding", "the file"],
  ["zero bytes", "", "empty-file", "the file"],
];

describe("stipule table import", () => {
  it.each(bad)("refuses %s, names the place, keeps nothing: exit code 3", async (_name, content, code, where) => {
    const file = join(home, "bad.csv");
    writeFileSync(file, content);
    const args = ["table", "import", file, "--id", "bad", "--title", "Bad", "--book", book];
    const ended = await stipule(...args, "--json");
    const report = jsonOf<TableReport>(ended);
    expect([ended.rc, report.accepted, report.edit]).toEqual([3, false, null]);
    expect(report.problems.map((problem) => [problem.code, problem.where])).toContainEqual([code, where]);
    const told = await stipule(...args);
    expect(told.rc).toBe(3);
    expect(told.out).toContain(`${where}:`);
    expect(jsonOf<{ tables: unknown[] }>(await stipule("table", "list", "--book", book, "--json")).tables).toEqual([]);
  });

  it("says of Latin-1 what it is and how to save it, and takes the same file in as UTF-8", async () => {
    const text = "taxon,Blütenfarbe\nA. alba,weiß\nB. rosea,rot\n";
    const file = join(home, "blüten.csv");
    writeFileSync(file, latin1(text));
    const args = ["table", "import", file, "--id", "umlaut", "--title", "Umlaut", "--book", book];
    const refused = await stipule(...args);
    expect(refused.out).toMatch(/not UTF-8.*Latin-1.*CSV UTF-8/);
    writeFileSync(file, text);
    expect((await stipule(...args)).rc).toBe(0);
    expect((await stipule("table", "export", "umlaut", "--book", book)).out).toContain("Blütenfarbe");
    expect((await stipule("table", "remove", "umlaut", "--book", book)).rc).toBe(0);
  });

  it.each([
    ["gower", ["gower", "FILE"], 2],
    ["shift", ["shift", "--photos", "FILE", "--stops", "FILE"], 2],
    ["stand", ["stand", "--table", "FILE", "--looks", "FILE"], 3],
    ["shortest", ["shortest", "--table", "FILE", "A. alba"], 3],
  ] as const)("loses no letter of Latin-1 in silence: %s", async (_verb, words, rc) => {
    const file = join(home, "latin1.csv");
    writeFileSync(file, latin1("taxon,Größe\nA. alba,weiß\n"));
    const ended = await stipule(...words.map((word) => (word === "FILE" ? file : word)));
    expect([ended.rc, `${ended.out}${ended.err}`]).toEqual([rc, expect.stringContaining("UTF-8")]);
  });

  it("and export are there and back again: the tables that come with Stipule, through the book and the file", async () => {
    for (const starter of starterTables(programRoot)) {
      const read = await starter.read();
      // The pattern has no taxa; a table without any is refused, so it gets one, as its user would add it.
      const table = read.taxa.length > 0 ? read : referenceTable.parse({ ...read, taxa: [{ id: "new", name: "Novum additum" }] });
      const bench = await openWorkbench(book, { clock: fixedClock });
      await bench.workbench.store.edit({ label: "starter" }, (edit) => edit.putTable(table));
      await bench.close();
      const file = join(home, "there.csv");
      writeFileSync(file, jsonOf<{ csv: string }>(await stipule("table", "export", table.id, "--book", book, "--json")).csv);
      const taken = await stipule("table", "import", file, "--id", "back", "--title", table.title, "--book", book);
      expect([starter.key, taken.rc, taken.err, taken.out]).toEqual([starter.key, 0, "", expect.not.stringContaining("\n  ")]);
      const again = jsonOf<{ csv: string }>(await stipule("table", "export", "back", "--book", book, "--json")).csv;
      expect(again).toBe(readFileSync(file, "utf8"));
      const after = await openWorkbench(book, { clock: fixedClock });
      const back = (await after.workbench.store.table("back" as TableId))!;
      await after.close();
      // The order of scores says nothing.
      const bySource = ({ scores, ...rest }: ReferenceTable) => ({
        ...rest,
        id: "",
        scores: new Set(scores.map((score) => JSON.stringify(Object.entries(score).toSorted(([a], [b]) => (a < b ? -1 : 1))))),
      });
      expect(bySource(back)).toEqual(bySource(table));
    }
  });
});

describe("a table sent by the page", () => {
  it("is refused and kept as on the command line, with the letters the browser makes of its bytes", async () => {
    const bench = await openWorkbench(book, { clock: fixedClock });
    const jobs = createJobs();
    const server = createServer(bench, { webRoot: home, jobs, port: () => 4810, checkReplies: true });
    const post = async (csv: string, keep: boolean): Promise<TableReport> => {
      const response = await server.request("http://localhost:4810/api/tables", {
        method: "POST",
        headers: { host: "localhost:4810", origin: "http://localhost:4810", "content-type": "application/json" },
        body: JSON.stringify({ csv, tableId: "sent", title: "Sent", keep }),
      });
      expect(response.status).toBe(200);
      return (await response.json()) as TableReport;
    };
    for (const [name, content, code, where] of bad) {
      // The page reads the file as File.text() does: decoded as UTF-8, what is none as U+FFFD.
      const report = await post(await new Blob([content as BlobPart]).text(), true);
      expect([name, report.accepted, report.edit]).toEqual([name, false, null]);
      expect(report.problems.map((problem) => [problem.code, problem.where])).toContainEqual([code, where]);
    }
    expect(await bench.workbench.store.table("sent" as TableId)).toBeUndefined();
    expect(await post(good, false)).toMatchObject({ accepted: true, edit: null });
    expect(await bench.workbench.store.table("sent" as TableId)).toBeUndefined();
    expect(await post(good, true)).toMatchObject({ accepted: true, table: { taxonCount: 2, characterCount: 2 } });
    expect((await bench.workbench.store.table("sent" as TableId))?.taxa).toHaveLength(2);

    // A program may send bytes that are not UTF-8 as JSON: the letters are lost there, and it is told.
    const raw = await server.request("http://localhost:4810/api/tables", {
      method: "POST",
      headers: { host: "localhost:4810", "x-stipule": "1", "content-type": "application/json" },
      body: new Uint8Array(latin1(JSON.stringify({ csv: "taxon,colour\nA. müelleri,white\n", tableId: "raw", title: "Raw", keep: true }))),
    });
    expect(((await raw.json()) as TableReport).problems.map((problem) => problem.code)).toEqual(["wrong-encoding"]);
    await jobs.close();
    await bench.close();
  });
});
