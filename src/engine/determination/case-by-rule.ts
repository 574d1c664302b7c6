/** The case of a plant by the visible rule alone: enough for a headline, cheap enough for every plant on every page. */
import type { IsoDate } from "../base/dates.js";
import type { TaxonId } from "../base/ids.js";
import type { SettledRule } from "../characters/book-content.js";
import type { Happening, ResultWord } from "../characters/followed-plant.js";
import type { ReferenceTable, Taxon } from "../characters/reference-table.js";
import type { CharacterFinding, HybridPairStanding, RuleOutcome } from "./case-file.js";
import { evidenceUpTo, findingsOf, type PlantEvidence } from "./findings.js";
import { hybridPairs } from "./hybrid-pairs.js";
import { applyRule, rivalsToExclude, weighTaxa, type TaxonBeforeRule } from "./rule.js";
import { scoreLookup, type ScoreLookup } from "./score-lookup.js";

export interface CaseInput {
  readonly table: ReferenceTable;
  /** Looks and readings of one plant (or of one specimen); what is left out or later than `upTo` is not counted. */
  readonly evidence: PlantEvidence;
  /** The rivals its keeper keeps in mind; empty = every taxon expected in the county. */
  readonly rivalIds: readonly TaxonId[];
  readonly happenings: readonly Happening[];
  readonly rule: SettledRule;
  /** Only evidence up to and including this day counts; null = all. */
  readonly upTo: IsoDate | null;
}

export interface CaseByRule {
  readonly word: ResultWord;
  /** The taxa the word is about. */
  readonly taxonIds: readonly TaxonId[];
  readonly counted: PlantEvidence;
  readonly findings: readonly CharacterFinding[];
  readonly weighed: readonly TaxonBeforeRule[];
  readonly outcome: RuleOutcome;
  readonly hybridPairs: readonly HybridPairStanding[];
  readonly rivals: readonly TaxonId[];
  readonly scores: ScoreLookup;
}

/** The genus of a name; the sign before the name of a hybrid genus is no part of it. */
const genusOf = (taxon: Taxon | undefined): string => taxon?.name.replace(/^(?:[x\u00D7]\s+|\u00D7)/u, "").split(" ")[0] ?? "";

const wordFor = (
  table: ReferenceTable,
  outcome: RuleOutcome,
  pairs: readonly HybridPairStanding[],
  rule: SettledRule,
): { readonly word: ResultWord; readonly taxonIds: readonly TaxonId[] } => {
  const { left } = outcome;
  const genera = new Set(table.taxa.filter((taxon) => left.length === 0 || left.includes(taxon.id)).map(genusOf));
  if (left.length === 1) return { word: outcome.settled ? "species" : "cf", taxonIds: left };
  if (left.length === 2) return { word: "one-of-two", taxonIds: left };
  const best = pairs[0];
  if (left.length === 0 && best !== undefined) return { word: "hybrid-question", taxonIds: best.parents };
  // Several left after enough has been seen: one knows the genus. Before that, one knows too little to say even so much.
  const enough = outcome.groupsSeen >= rule.groupsSeen && genera.size === 1;
  return { word: enough ? "genus-only" : "not-enough-evidence", taxonIds: left };
};

/** Weighs every taxon by the visible rule and puts the result into a word. */
export const caseByRule = ({ table, evidence, rivalIds, rule, upTo }: CaseInput): CaseByRule => {
  const scores = scoreLookup(table);
  const counted = evidenceUpTo(evidence, upTo);
  const findings = findingsOf(table.characters, counted);
  const weighed = weighTaxa(table, scores, findings, rule);
  const outings = new Set([...counted.looks, ...counted.readings].map((piece) => piece.outingId)).size;
  const rivals = rivalsToExclude(table.taxa, rivalIds);
  const outcome = applyRule(table, weighed, findings, outings, rivals, rule);
  const pairs = outcome.left.length === 0 ? hybridPairs(table, weighed, findings) : [];
  return { ...wordFor(table, outcome, pairs, rule), counted, findings, weighed, outcome, hybridPairs: pairs, rivals, scores };
};
