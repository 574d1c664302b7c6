/**
 * The whole case of a plant: the visible rule and the probability engine side by side, what speaks for and against, how
 * firmly it stands, what would decide. The rule gives the word; the engine never rules anything out; where the two part,
 * the case says so.
 */
import type { CharacterId, TaxonId } from "../base/ids.js";
import { median } from "../measurement/quantile.js";
import type { CaseFile, CharacterFinding, Meeting, RivalStanding, Witness } from "./case-file.js";
import { caseByRule, type CaseByRule, type CaseInput } from "./case-by-rule.js";
import type { DeterminationOptions } from "./determination-options.js";
import type { CharacterEvidence, Sureness } from "./evidence-input.js";
import type { PlantEvidence } from "./findings.js";
import { expectedInformation } from "./information.js";
import { nextChecks } from "./next-check.js";
import { gatherEvidence, posteriorOf } from "./posterior.js";
import { prepareTable, type PreparedTable } from "./prepared-table.js";
import { robustness } from "./robustness.js";
import { witnessesOf, type TaxonBeforeRule } from "./rule.js";
import type { RunningEvidence } from "./running-evidence.js";
import { typicality } from "./typicality.js";
import { weightOfEvidence } from "./weight-of-evidence.js";

/** A witness that speaks against by less than this is not worth a line. One deciban is a ratio of 1.26; Good (1950) calls it about the least the mind notices. */
const LEAST_DECIBANS = 0.5;

/** Seed filling below half raises the question of a hybrid; the same for any character of that role. Common practice, no source. */
const LOW_HYBRID_CHECK_PERCENT = 50;

const surenessOf = (looks: PlantEvidence["looks"], finding: CharacterFinding): Sureness => {
  if (finding.finding.kind === "states" && finding.finding.betweenTwo) return "between-two";
  const own = looks.filter((look) => finding.lookIds.includes(look.id));
  return own.some((look) => look.sure === "sure") ? "sure" : "fairly";
};

/** What the probability side is told of a finding. */
export const characterEvidence = (finding: CharacterFinding, counted: PlantEvidence): CharacterEvidence => {
  const { characterId, group } = finding;
  const blank = { characterId, group, states: [], sureness: "sure", n: finding.n, values: [], stems: null, plusMinus: null } as const;
  switch (finding.finding.kind) {
    case "states":
      return { ...blank, kind: "states", states: finding.finding.states, sureness: surenessOf(counted.looks, finding) };
    case "absent":
      return { ...blank, kind: "absent", states: finding.finding.states, sureness: surenessOf(counted.looks, finding) };
    case "measured":
      return {
        ...blank,
        kind: "measured",
        values: finding.finding.values,
        stems: finding.finding.stems,
        plusMinus: finding.finding.plusMinus,
      };
  }
};

const rivalStanding = (taxon: TaxonBeforeRule, probability: number, inRange: boolean): RivalStanding => ({
  taxonId: taxon.taxonId,
  left: taxon.left,
  againstSum: taxon.againstSum,
  against: taxon.against,
  onlyRarely: taxon.onlyRarely,
  probability,
  inRange,
});

/** Witnesses of the leader with their weight against the runner-up: those that stand, and those that stand against. */
const witnesses = (
  input: CaseInput,
  rule: CaseByRule,
  running: RunningEvidence,
  leader: TaxonBeforeRule,
  runnerUp: TaxonId | null,
): { readonly stands: readonly Witness[]; readonly standsAgainst: readonly Witness[] } => {
  const characters = new Map<string, CaseInput["table"]["characters"][number]>(input.table.characters.map((c) => [c.id, c]));
  const decibans = new Map(
    runnerUp === null
      ? []
      : weightOfEvidence(running, leader.taxonId, runnerUp).groups.map((group) => [group.group, group.decibans] as const),
  );
  const ofMeeting = (which: (meeting: Meeting) => boolean): readonly Witness[] =>
    witnessesOf(
      rule.findings,
      characters,
      leader.meetings,
      (meeting, character) => character.role !== "hybrid-check" && which(meeting),
    ).map((witness) => ({ ...witness, decibans: decibans.get(witness.group) ?? null }));
  const against = ofMeeting((meeting) => meeting === "against");
  const fitting = ofMeeting((meeting) => meeting === "fits" || meeting === "fits-rarely").filter(
    (witness) => !against.some((other) => other.group === witness.group),
  );
  const speaksAgainst = (witness: Witness): boolean => (witness.decibans ?? 0) < -LEAST_DECIBANS;
  const strongestFirst = (a: Witness, b: Witness): number => Math.abs(b.decibans ?? 0) - Math.abs(a.decibans ?? 0) || b.weight - a.weight;
  return {
    stands: fitting.filter((witness) => !speaksAgainst(witness)).toSorted(strongestFirst),
    standsAgainst: [...against, ...fitting.filter(speaksAgainst)].toSorted(strongestFirst),
  };
};

const disagreementOf = (
  rule: CaseByRule,
  best: { readonly hypothesis: TaxonId | "none-of-these"; readonly probability: number },
): CaseFile["disagreement"] => {
  const { left } = rule.outcome;
  const agrees = best.hypothesis === "none-of-these" ? left.length === 0 : left.includes(best.hypothesis);
  return agrees ? null : { ruleSays: left, probabilitySays: best.hypothesis, probability: best.probability };
};

/** Values of characters whose lowness asks for a hybrid (well-filled seeds). */
const hybridSigns = (input: CaseInput, counted: PlantEvidence): CaseFile["hybridSigns"] =>
  input.table.characters
    .filter((character) => character.role === "hybrid-check" && character.answer.kind === "measure" && character.answer.unit === "%")
    .flatMap((character) => {
      const values = counted.readings.filter((reading) => reading.characterId === character.id).flatMap((reading) => reading.values);
      return values.length > 0 && median(values) < LOW_HYBRID_CHECK_PERCENT
        ? [{ characterId: character.id, values, median: median(values) }]
        : [];
    });

/** When nothing fits: the characters that speak against the taxa that come nearest, to be looked at again first. */
const checkAgain = (rule: CaseByRule): readonly CharacterId[] => {
  if (rule.outcome.left.length > 0) return [];
  const nearest = rule.weighed.toSorted((a, b) => a.againstSum - b.againstSum).slice(0, 2);
  return [...new Set(nearest.flatMap((taxon) => taxon.against.flatMap((witness) => witness.characterIds[0] ?? [])))];
};

/**
 * Builds the case.
 * @param prepared the table prepared for the probability engine; give it when many plants share one table
 */
export const buildCase = (
  input: CaseInput,
  options: Partial<DeterminationOptions> = {},
  prepared: PreparedTable = prepareTable(input.table),
): CaseFile => {
  const rule = caseByRule(input);
  const { counted, findings, weighed, outcome } = rule;
  const evidence = findings.map((finding) => characterEvidence(finding, counted));
  const running = gatherEvidence(prepared, evidence, options);
  const chances = posteriorOf(running);
  const probability = new Map(chances.taxa.map((chance) => [chance.taxonId, chance.probability]));
  const byProbability = weighed.toSorted((a, b) => (probability.get(b.taxonId) ?? 0) - (probability.get(a.taxonId) ?? 0));
  const leader = byProbability.find((taxon) => taxon.left) ?? null;
  const runnerUp = byProbability.find((taxon) => taxon.taxonId !== leader?.taxonId)?.taxonId ?? null;
  const chanceOf = (hypothesis: TaxonId | "none-of-these"): number =>
    hypothesis === "none-of-these" ? chances.noneOfThese.probability : (probability.get(hypothesis) ?? 0);
  const speaks = running.answered().length > 0;
  const firm = speaks ? robustness(running) : null;
  return {
    upTo: input.upTo,
    word: rule.word,
    taxonIds: rule.taxonIds,
    rule: outcome,
    findings,
    leader: leader?.taxonId ?? null,
    runnerUp,
    ...(leader === null ? { stands: [], standsAgainst: [] } : witnesses(input, rule, running, leader, runnerUp)),
    rivals: byProbability.map((taxon) =>
      rivalStanding(
        taxon,
        probability.get(taxon.taxonId) ?? 0,
        input.table.taxa.find((t) => t.id === taxon.taxonId)?.expectedInCounty ?? true,
      ),
    ),
    noneOfThese: chances.noneOfThese.probability,
    leaderWithoutPrior:
      leader === null ? null : (chances.taxa.find((chance) => chance.taxonId === leader.taxonId)?.evenPriorProbability ?? null),
    typicality: leader === null ? null : (typicality(running, leader.taxonId)?.value ?? null),
    robustness: { leastWrong: firm?.leastWrong ?? null, characterIds: firm?.characterIds ?? [] },
    disagreement: speaks ? disagreementOf(rule, { hypothesis: chances.leader, probability: chanceOf(chances.leader) }) : null,
    nextChecks: nextChecks(
      input.table,
      rule.scores,
      outcome,
      findings,
      input.happenings,
      input.upTo,
      (characterId) => expectedInformation(running, characterId)?.bits ?? null,
    ),
    hybridPairs: rule.hybridPairs,
    hybridSigns: hybridSigns(input, counted),
    checkAgain: checkAgain(rule),
  };
};
