/** Computations on plain files, run as a person would: no book, `--json`, exit codes. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { run } from "../../src/cli/index.js";

const folder = mkdtempSync(join(tmpdir(), "stipule-plain-"));
const file = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};
const stipule = async (...words: string[]) => {
  const lines: string[] = [];
  let code = -1;
  await run(words, {
    out: (text) => lines.push(text),
    err: (text) => lines.push(text),
    env: {},
    home: folder,
    clock: () => new Date("2026-01-01T00:00:00Z"),
    programRoot: folder,
    setExitCode: (value) => (code = value),
  });
  return { code, text: lines.join("\n"), json: () => JSON.parse(lines.join("\n")) };
};

let table = "";
let looks = "";
beforeAll(() => {
  table = file("t.csv", "taxon,petal length (mm),flower colour\nA. alba,3-5(-7),white | (pink)\nA. rosea,8-9,red\n");
  looks = file("l.csv", "specimen,petal_length,flower_colour\ns1,4 4.5 5,white\ns2,8 8.5 8.2,red\n");
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("on plain files", () => {
  it("stands every specimen, with probabilities that sum to one", async () => {
    const { code, json } = await stipule("stand", "--table", table, "--looks", looks, "--json");
    expect(code).toBe(0);
    const { specimens } = json();
    expect(specimens.map((one: { specimen: string; taxonIds: string[] }) => [one.specimen, one.taxonIds])).toEqual([
      ["s1", ["A._alba"]],
      ["s2", ["A._rosea"]],
    ]);
    for (const one of specimens) {
      const sum = one.probabilities.reduce((s: number, p: { probability: number }) => s + p.probability, one.noneOfThese);
      expect(sum).toBeCloseTo(1, 12);
    }
  });

  it("names the row with a problem and ends with 3", async () => {
    const bad = file("bad.csv", "specimen,flower_colour\ns1,blue\ns2,red\n");
    const { code, text } = await stipule("stand", "--table", table, "--looks", bad);
    expect(code).toBe(3);
    expect(text).toContain("row 2, column flower_colour");
    expect(text).toContain("s2:");
  });

  it("tells taxa apart and singles one out", async () => {
    const apart = await stipule("apart", "--table", table, "A. alba", "A. rosea", "--json");
    expect(apart.json().rows.map((row: { difference: string }) => row.difference)).toEqual(["sure", "sure"]);
    const shortest = await stipule("shortest", "--table", table, "A. alba", "--json");
    expect(shortest.json()).toMatchObject({ size: 1, howMany: 2 });
  });

  it("reckons Gower distances by hand: one numeric column of range 4, one nominal", async () => {
    const rows = file("g.csv", "id,len,hue\na,10,red\nb,14,red\nc,12,white\n");
    const { json } = await stipule("gower", rows, "--json");
    expect(json().pairs.map((pair: { distance: number }) => pair.distance)).toEqual([0.5, 0.75, 0.75]);
  });

  it("finds a clock shift, writes notation, sets names, coarsens a place", async () => {
    const photos = file(
      "p.csv",
      `taken\n${["10:00:10", "10:00:50", "10:03:20", "10:06:00", "10:06:40", "10:09:30"].map((t) => `2022-05-01T${t}`).join("\n")}\n`,
    );
    const stops = file(
      "s.csv",
      "from,to\n2022-05-01T10:07:00,2022-05-01T10:08:40\n2022-05-01T10:10:10,2022-05-01T10:11:00\n2022-05-01T10:13:00,2022-05-01T10:14:20\n2022-05-01T10:16:30,2022-05-01T10:17:10\n",
    );
    const shift = await stipule("shift", "--photos", photos, "--stops", stops, "--json");
    expect(shift.code).toBe(0);
    expect(shift.json()).toMatchObject({ proposedS: 440, insideAfter: 6 });
    expect((await stipule("notation", "43", "45", "51.5")).text).toBe("43.0–51.5 mm, n = 3");
    expect((await stipule("name", "Epilobium obscurum Schreb.")).text).toContain("</i> Schreb.");
    expect((await stipule("coarsen", "--as", "0.01-degree", "--json", "--", "54.31931", "4.21544")).json()).toMatchObject({
      lat: 54.32,
      lon: 4.22,
    });
  });

  it.each([
    [["gower", "/no/such/file.csv"], "/no/such/file.csv"],
    [["coarsen", "--as", "0.01-degree", "--", "north", "4"], "north"],
    [["notation", "forty"], "forty"],
    [["stand", "--table", "x.csv"], "--looks"],
  ])("ends %j with 2 and says what is wrong", async (words, said) => {
    const { code, text } = await stipule(...words);
    expect(code).toBe(2);
    expect(text).toContain(said);
  });
});
