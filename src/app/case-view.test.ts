/** A season's cases told in words: the hard pair through the year, what next and when, no species fits, taxa side by side. */
import { describe, expect, it } from "vitest";
import { demoYear } from "../../tests/support/demo-year.js";
import { readOnlyStore } from "../../tests/support/account-fixture.js";
import type { IsoDate } from "../engine/index.js";
import { spansText } from "../words/index.js";
import { apartView } from "./apart-view.js";
import { caseView } from "./case-view.js";
import { plantPage } from "./plant-page.js";
import type { Workbench } from "./workbench.js";
import { yearView } from "./year-view.js";

const bench: Workbench = { store: readOnlyStore(demoYear().content, "/nowhere"), today: () => "2026-01-01" as IsoDate };
const day = (text: string): IsoDate => text as IsoDate;
const headline = async (plant: string, on: string): Promise<string> => spansText((await caseView(bench, plant, day(on))).standing.headline);

describe("the hard pair through the year", () => {
  it("says three left, two left, one left but not settled, settled", async () => {
    expect(await headline("P1", "2022-05-29")).toBe(
      "Three are left: square-stalked willowherb, short-fruited willowherb or American willowherb.",
    );
    expect(await headline("P1", "2022-06-19")).toBe("One of two: square-stalked willowherb or short-fruited willowherb.");
    expect(await headline("P1", "2022-08-21")).toBe(
      "Only short-fruited willowherb, Epilobium obscurum Schreb. is left, but it is not settled.",
    );
    expect(await headline("P1", "2022-09-18")).toBe("Settled: short-fruited willowherb, Epilobium obscurum Schreb.");
  });

  it("names the one witness that keeps it unsettled, and keeps the overturned slip with its reason", async () => {
    const view = await caseView(bench, "P1", day("2022-08-21"));
    expect(view.standing.settled).toBe(false);
    expect(view.rule.wanting[0]).toContain("square-stalked willowherb by one witness only: capsule length when full-grown");
    expect(view.decide.map((check) => check.characterId)).toEqual(["winter_organ"]);
    const slip = view.slips[0]!;
    expect([spansText(slip.nameSpans), slip.by, slip.overturned]).toEqual(["Epilobium cf. tetragonum L.", "R.O.", true]);
    expect(slip.why).toContain("four stem lines");
  });

  it("counts leaf length, width, ratio and shape as one witness", async () => {
    const view = await caseView(bench, "P1", day("2022-11-30"));
    const leaf = [...view.stands, ...view.standsAgainst].filter((witness) => witness.group === "leaf size");
    expect(leaf).toHaveLength(1);
    expect(leaf[0]!.characterIds.toSorted()).toEqual(["leaf_len", "leaf_ratio", "leaf_shape", "leaf_wid"]);
    expect(leaf[0]!.title).not.toMatch(/\d\.\d\d/u);
  });

  it("every witness leads to its looks or readings", async () => {
    const view = await caseView(bench, "P1", undefined);
    expect(view.stands.length).toBeGreaterThan(8);
    for (const witness of view.stands) expect(witness.lookIds.length + witness.readingIds.length).toBeGreaterThan(0);
  });
});

describe("what next, and when", () => {
  it("names the base and the capsules with their months and tools after 6 July", async () => {
    const { decide } = await caseView(bench, "P6", day("2022-07-06"));
    expect(decide.map((check) => check.characterId)).toEqual(["winter_organ", "capsule_len"]);
    expect(decide[0]).toMatchObject({
      lost: null,
      when: "can be seen 1 August to 31 March",
      why: "would tell square-stalked willowherb from short-fruited willowherb",
    });
    expect(decide[0]!.how).toContain("no tool; part, do not pull or dig");
    expect(decide[1]!.how).toContain("a ruler");
  });

  it("says after the mowing that this year it cannot be decided, and until when to go next year", async () => {
    const view = await caseView(bench, "P6", day("2022-07-27"));
    for (const check of view.decide) expect(check.lost).toBe("Not this year: mown on 20 July. Next year before 18 July.");
    expect(view.standing.explanation).toContain("This year it cannot be decided: mown on 20 July. Next year before 18 July.");
  });
});

describe("no species fits", () => {
  it("offers no species, the low seed filling, the pair first, and the looks to check again", async () => {
    const view = await caseView(bench, "P5", day("2022-11-06"));
    expect(spansText(view.standing.headline)).toBe("None of 10 fits. A hybrid of short-fruited willowherb and American willowherb?");
    expect(view.leader).toBeNull();
    expect(view.stands).toEqual([]);
    expect(view.hybrid.pairs[0]).toMatchObject({ againstSum: 17, known: true });
    expect(view.hybrid.signs[0]).toContain("14, 8, 17 and 11 %");
    expect(view.hybrid.checkAgain.length).toBeGreaterThan(0);
    expect(view.disagreement).toContain("the rule leaves no taxon");
  });
});

describe("a plant's page and the year", () => {
  it("shows what was looked for and not there apart from what could not be told, and never a blank as absent", async () => {
    const page = await plantPage(bench, "P1", undefined);
    const row = page.board.rows.find((r) => r.characterId === "winter_organ")!;
    expect(row.cells.map((cell) => [cell.stageId, cell.kind])).toEqual([
      ["S0", "could-not-tell"],
      ["S1", "cannot"],
      ["S2", "cannot"],
      ["S3", "cannot"],
      ["S4", "cannot"],
      ["S5", "cannot"],
      ["S6", "not-there"],
      ["S7", "seen"],
      ["S8", "seen"],
    ]);
    const glands = page.board.rows.find((r) => r.characterId === "glands")!;
    expect(glands.cells.find((cell) => cell.stageId === "S5")).toMatchObject({
      kind: "open",
      sentence: expect.stringContaining("not looked; can be seen 1 July to 31 August, lens ×20"),
    });
  });

  it("says which plants are settled, open, and a hybrid question", async () => {
    const year = await yearView(bench, undefined);
    expect(year.summary).toEqual([
      "4 plants are settled: Ditch plant, Yard plant, Ride plant and Fen plant.",
      "One plant raises a hybrid question: Bank plant.",
      "One plant stays open: Bridge plant.",
    ]);
    const bridge = year.rings.find((ring) => ring.plantId === "P6")!;
    expect(bridge.marks.filter((mark) => mark.kind === "nothing-left").map((mark) => mark.date)).toEqual([
      "2022-07-27",
      "2022-08-21",
      "2022-09-18",
      "2022-11-06",
    ]);
  });

  it("does not carry a mowing into the next year's growth", async () => {
    const { content } = demoYear();
    const mownBefore = content.happenings.map((happening) => ({ ...happening, date: day(`2021${happening.date.slice(4)}`) }));
    const later: Workbench = { ...bench, store: readOnlyStore({ ...content, happenings: mownBefore }, "/nowhere") };
    const { rings } = await yearView(later, undefined);
    expect(rings.flatMap((ring) => ring.marks).filter((mark) => mark.kind === "nothing-left")).toEqual([]);
  });

  it("has nothing to say of a plant that is not there", async () => {
    await expect(plantPage(bench, "P9", undefined)).rejects.toThrow("P9");
  });
});

describe("side by side", () => {
  it("puts what surely differs first", async () => {
    const view = await apartView(bench, "willowherbs", "tetragonum,obscurum");
    expect(view.rows.filter((row) => row.difference === "sure").map((row) => row.characterId)).toEqual(["winter_organ"]);
    expect(view.rows[0]!.cells.map((cell) => cell.text)).toEqual(["leafy rosettes at the stem foot", "long leafy runners above ground"]);
    expect(view.rows.some((row) => row.characterId === "seed_fill")).toBe(false);
  });

  it.each(["obscurum", "a,b", "hirsutum,parviflorum,montanum,lanceolatum,tetragonum,obscurum,roseum"])("refuses %s", async (taxa) => {
    await expect(apartView(bench, "willowherbs", taxa)).rejects.toMatchObject({ code: "taxa-not-comparable" });
  });
});
