/** Every state of the demo year at every date, by the plain reference rule whose answers were computed twice, by two programs. */
import { describe, expect, it } from "vitest";
import {
  applyRule,
  checksAtStages,
  difference,
  evidenceUpTo,
  findingsOf,
  hybridPairs,
  nextChecks,
  rivalsToExclude,
  scoreLookup,
  separations,
  settledRule,
  shortestDiagnosis,
  weighTaxa,
  type IsoDate,
  type PlantId,
  type TaxonId,
} from "../../../src/engine/index.js";
import { demoYear } from "../../support/demo-year.js";

const { content, expected } = demoYear();
const table = content.tables[0]!;
const scores = scoreLookup(table);
const rule = settledRule.parse({});
const rivals = rivalsToExclude(table.taxa, []);

const stand = (plantId: string, upTo: IsoDate | null) => {
  const evidence = evidenceUpTo(
    { looks: content.looks.filter((look) => look.plantId === plantId), readings: content.readings.filter((r) => r.plantId === plantId) },
    upTo,
  );
  const findings = findingsOf(table.characters, evidence);
  const weighed = weighTaxa(table, scores, findings, rule);
  const outings = new Set([...evidence.looks, ...evidence.readings].map((e) => e.outingId)).size;
  const outcome = applyRule(table, weighed, findings, outings, rivals, rule);
  return { findings, weighed, outcome, checks: nextChecks(table, scores, outcome, findings, [], upTo, () => null) };
};

describe("the demo year by the reference rule", () => {
  it.each(expected.perVisit.map((visit) => [`${visit.plant} after ${visit.afterVisit}`, visit] as const))("%s", (_, visit) => {
    const outing = content.outings.find((o) => o.id === visit.afterVisit)!;
    const { findings, weighed, outcome, checks } = stand(visit.plant, outing.date);
    expect(outcome.left).toEqual(visit.left);
    expect(outcome.groupsSeen).toBe(visit.groupsSeen);
    if (visit.settled !== undefined) expect(outcome.settled).toBe(visit.settled);
    const thin = outcome.wanting.flatMap((want) => (want.kind === "rivals-out-by-one-witness" ? want.taxonIds : []));
    expect(thin).toEqual(visit.rivalsOutByOneGroupOnly);
    const left = weighed.filter((taxon) => taxon.left);
    expect(Object.fromEntries(left.filter((t) => t.onlyRarely.length > 0).map((t) => [t.taxonId, t.onlyRarely.toSorted()]))).toEqual(
      visit.onlyRarely,
    );
    expect(
      Object.fromEntries(
        left.filter((t) => t.against.length > 0).map((t) => [t.taxonId, Object.fromEntries(t.against.map((w) => [w.group, w.weight]))]),
      ),
    ).toEqual(visit.againstButNotOut);
    expect(checks.slice(0, 5).map((c) => ({ character: c.characterId, pairs: c.pairs, score: c.score, seenIn: c.seenIn }))).toEqual(
      visit.nextCheck,
    );
    const next = content.outings.find((o) => o.date > outing.date);
    const stages = content.stageRecords.filter((r) => r.plantId === visit.plant && r.outingId === next?.id).flatMap((r) => r.stageId ?? []);
    expect(
      checksAtStages(checks, stages)
        .slice(0, 4)
        .map((c) => c.characterId),
    ).toEqual(visit.atNextVisit);
    expect(findings.every((finding) => finding.dates.every((date) => date <= outing.date))).toBe(true);
  });

  it("settles each plant at the expected visit and no earlier", () => {
    const settledAt = Object.fromEntries(
      content.plants.map((plant) => [plant.id, content.outings.find((o) => stand(plant.id, o.date).outcome.settled)?.id ?? null]),
    );
    expect(settledAt).toEqual(expected.settledAt);
  });

  it("ranks the hybrid pairs of the Bank plant", () => {
    const { weighed, findings } = stand("P5" as PlantId, null);
    const pairs = hybridPairs(table, weighed, findings).map((pair) => ({ pair: pair.parents, againstSum: pair.againstSum }));
    expect(pairs.slice(0, expected.hybridPairs["P5"]!.length)).toEqual(expected.hybridPairs["P5"]);
  });

  it("finds which characters separate each pair surely", () => {
    for (const [pair, characters] of Object.entries(expected.separates)) {
      const [a, b] = pair.split("|") as [TaxonId, TaxonId];
      expect(
        separations(table, scores, a, b)
          .filter((s) => s.how === "sure")
          .map((s) => s.characterId),
        pair,
      ).toEqual(characters);
      expect(characters.every((c) => difference(scores(a, c as never), scores(b, c as never)) === "sure")).toBe(true);
    }
  });

  it("finds the shortest diagnoses, their number and the weightiest", () => {
    for (const [taxonId, want] of Object.entries(expected.shortestDiagnoses)) {
      const { size, best, howMany } = shortestDiagnosis(table, scores, taxonId as TaxonId);
      expect({ size, best, howMany }, taxonId).toEqual(want);
    }
  });
});
