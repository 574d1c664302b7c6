import { describe, expect, it } from "vitest";
import fc from "fast-check";
import { demoYear } from "../../../../tests/support/demo-year.js";
import { referenceTable, type ReferenceTable } from "../../characters/reference-table.js";
import { readTableCsv } from "./read.js";
import { writeTableCsv } from "./write.js";

const read = (csv: string) => readTableCsv(csv, { id: "t", title: "", stages: [] });
const codes = (csv: string): readonly string[] => read(csv).problems.map((problem) => problem.code);

const bySource = (table: ReferenceTable): ReferenceTable => ({
  ...table,
  scores: table.scores.toSorted((a, b) =>
    `${a.taxonId} ${a.characterId} ${a.sourceId ?? ""}` < `${b.taxonId} ${b.characterId} ${b.sourceId ?? ""}` ? -1 : 1,
  ),
});

describe("a reference table as CSV", () => {
  it("comes back as it was: the demo's table", () => {
    const table = demoYear().content.tables[0]!;
    const back = readTableCsv(writeTableCsv(table), { id: table.id, title: "", stages: [] });
    expect(back.problems).toEqual([]);
    expect(bySource(back.table!)).toEqual(bySource(table));
  });

  it("reads a plain sheet without any # row: kinds, units and states from the cells", () => {
    const { table, problems } = read(
      "taxon,petal length (mm),flower colour\nA. alba,3-5(-7),white | (pink)\nA. rosea,4-6,pink\nA. nova,?,\n",
    );
    expect(problems).toEqual([]);
    expect(table!.characters.map((c) => [c.id, c.answer.kind])).toEqual([
      ["petal_length", "measure"],
      ["flower_colour", "states"],
    ]);
    expect(table!.scores[0]!.value).toEqual({ kind: "range", min: null, low: 3, high: 5, max: 7 });
    expect(table!.scores[1]!.value).toEqual({ kind: "states", usual: ["white"], rarely: ["pink"] });
    expect(table!.scores).toHaveLength(4);
  });

  it("refuses a ratio of measures in different units, and a condition on a state that is not there", () => {
    const ratio = (unit: string) =>
      codes(`taxon,long,wide,slim\n#kind,measure,measure,ratio long / wide\n#unit,mm,${unit},\nA. alba,30-50,3-5,8-12\n`);
    expect(ratio("mm")).toEqual([]);
    expect(ratio("cm")).toEqual(["ratio-of-units"]);
    const gated = (state: string) =>
      codes(`taxon,stalk,stalk length (mm)\n#only if,,stalk:${state}\nA. alba,long,3-5\nB. bella,none,n/a\n`);
    expect(gated("long")).toEqual([]);
    expect(gated("lon")).toEqual(["unknown-state"]);
  });

  it("converts a unit written in a cell to the column's", () => {
    const { table } = read("taxon,capsule (mm)\nA,4-6 cm\nB,40-60\n");
    expect(table!.scores.map((score) => score.value)).toEqual([
      { kind: "range", min: null, low: 40, high: 60, max: null },
      { kind: "range", min: null, low: 40, high: 60, max: null },
    ]);
  });

  it("takes in semicolons and tabs, a byte order mark, Windows line ends", () => {
    for (const mark of [";", "\t"]) expect(read(`\uFEFFtaxon${mark}a\r\nX${mark}red\r\nY${mark}blue\r\n`).problems).toEqual([]);
  });

  it("names what is wrong by row and column and takes nothing in", () => {
    const reading = read("taxon,petal (mm),colour\nA,7-5,white\nA,=SUM(B2:B9),\n,1-2,red\n");
    expect(reading.table).toBeNull();
    expect(reading.problems.map((problem) => [problem.code, problem.where])).toEqual([
      ["reversed-range", "row 2, column petal (mm)"],
      ["taxon-twice", "row 3"],
      ["formula", "row 3, column petal (mm)"],
      ["taxon-without-name", "row 4"],
    ]);
    for (const problem of reading.problems) expect(problem.text.length).toBeGreaterThan(20);
  });

  it.each([
    ["", ["empty-file"]],
    ["name,a\nX,red\n", ["no-taxon-column"]],
    ["taxon\nX\n", ["no-characters"]],
    ["taxon,a\n", ["no-taxa"]],
    ["taxon,a,a\nX,red,blue\n", ["column-twice"]],
    ["taxon,a,\nX,red,blue\n", ["column-without-name"]],
    ["taxon,a\nX,red,blue\n", ["too-many-cells"]],
    ["taxon,a\n#nonsense,1\nX,red\n", ["unknown-row"]],
    ["taxon,a\n#kind,states\n#states,red | blue\nX,green\n", ["unknown-state"]],
    ["taxon,a\nX,r\uFFFDt\n", ["wrong-encoding"]],
    ['taxon,a\nX,"red\n', ["not-csv"]],
    ["taxon,a,b\n#only if,b: x,a: y\n#states,y,x\nX,y,x\n", ["circle", "circle"]],
    ["taxon,a\n#seen in,S9\n#kind,states\nX,red\n", ["unknown-stage"]],
    ["taxon,a,source\nX,red,Gray\n", ["unknown-source"]],
  ])("refuses %j", (csv, expected) => {
    const reading = read(csv);
    expect(reading.table).toBeNull();
    for (const code of expected) expect(codes(csv)).toContain(code);
  });

  it("counts problems beyond the two hundredth instead of listing them", () => {
    const rows = Array.from({ length: 400 }, (_, i) => `t${String(i)},9-1`).join("\n");
    const { problems } = read(`taxon,a (mm)\n${rows}\n`);
    expect(problems).toHaveLength(201);
    expect(problems.at(-1)).toMatchObject({ code: "and-more", text: "and 200 more" });
  });

  it("writes no cell that a spreadsheet would run", () => {
    const table = referenceTable.parse({
      id: "t",
      title: "=1+1",
      notice: "@x",
      stages: [],
      characters: [
        {
          id: "a",
          part: "leaf",
          name: "-cmd",
          group: "+g",
          answer: { kind: "states", states: [{ id: "s", name: "=s" }] },
          note: "'quoted",
        },
      ],
      taxa: [{ id: "A", name: "=HYPERLINK(1)" }],
      scores: [{ taxonId: "A", characterId: "a", value: { kind: "states", usual: ["s"] } }],
    });
    const csv = writeTableCsv(table);
    for (const line of csv.split("\r\n")) for (const cell of line.split(",")) expect(cell).not.toMatch(/^"?[=+@\t-]/u);
    expect(readTableCsv(csv, { id: "t", title: "", stages: [] }).table).toEqual(table);
  });
});

const text = fc
  .string({ maxLength: 20, unit: "grapheme" })
  .map((t) => t.trim().normalize("NFC"))
  .filter((t) => !t.includes("\uFFFD") && !/[\r\n]/u.test(t));
const idOf = (prefix: string) => fc.nat({ max: 99 }).map((n) => `${prefix}${String(n)}`);

const anyTable = fc
  .record({
    states: fc.uniqueArray(idOf("s"), { minLength: 1, maxLength: 4 }),
    taxa: fc.uniqueArray(idOf("T"), { minLength: 1, maxLength: 5 }),
    title: text.filter((t) => t !== ""),
    words: text,
    numbers: fc.array(
      fc.double({ min: 0.001, max: 9999, noNaN: true }).map((n) => Number(n.toPrecision(6))),
      { minLength: 4, maxLength: 4 },
    ),
    kinds: fc.array(fc.constantFrom("usual", "rarely", "range", "n/a", "none"), { minLength: 10, maxLength: 10 }),
  })
  .map(({ states, taxa, title, words, numbers, kinds }) => {
    const [min, low, high, max] = numbers.toSorted((a, b) => a - b);
    return referenceTable.parse({
      id: "t",
      title,
      notice: words,
      stages: [{ id: "S1", name: "shoots", bbch: ["10", "a|b"], looksLike: words }],
      characters: [
        {
          id: "c1",
          part: "leaf",
          name: "states",
          group: "g",
          answer: {
            kind: "states",
            ordered: true,
            states: states.map((id) => ({ id, name: `n ${id}`, plain: words })),
            absence: states[0],
          },
          seenIn: ["S1"],
          errors: words === "" ? [] : [words],
        },
        {
          id: "c2",
          part: "leaf",
          name: "measure",
          group: "g",
          answer: { kind: "measure", unit: "mm", minN: 7 },
          onlyIf: { character: "c1", states: [states[0]] },
          misreading: 0.1,
        },
      ],
      taxa: taxa.map((id) => ({ id, name: `Genus ${id}`, inOneLine: words, vernacular: words === "" ? {} : { en: words } })),
      scores: taxa.flatMap((taxonId, i) => {
        const kind = kinds[i] ?? "none";
        if (kind === "none") return [];
        if (kind === "range") return [{ taxonId, characterId: "c2", value: { kind: "range", min, low, high, max } }];
        if (kind === "n/a") return [{ taxonId, characterId: "c2", value: { kind: "not-applicable" } }];
        return [
          {
            taxonId,
            characterId: "c1",
            value: { kind: "states", usual: kind === "usual" ? [states[0]] : [], rarely: kind === "rarely" ? [states[0]] : [] },
            page: "p. 7",
            words,
          },
        ];
      }),
    });
  });

describe("read(write(table))", () => {
  it("is the table", () => {
    fc.assert(
      fc.property(anyTable, (table) => {
        const back = readTableCsv(writeTableCsv(table), { id: "t", title: "", stages: [] });
        expect(back.problems).toEqual([]);
        expect(bySource(back.table!)).toEqual(bySource(table));
      }),
      { numRuns: 200 },
    );
  });
});
