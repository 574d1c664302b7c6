/**
 * The case of a plant as data: what the evidence up to a day says, by the visible rule and by the probability engine, and
 * where the two disagree. No sentences here; words are made of it elsewhere so that every output says the same.
 */
import type { IsoDate } from "../base/dates.js";
import type { CharacterId, HappeningId, LookId, ReadingId, StageId, StateId, TaxonId } from "../base/ids.js";
import type { Happening, ResultWord } from "../characters/followed-plant.js";
import type { Tool } from "../characters/character.js";

/** What the evidence of one character comes to, after pooling: the states seen, or the middle of the measured values. */
export type Finding =
  | { readonly kind: "states"; readonly states: readonly StateId[]; readonly betweenTwo: boolean }
  | { readonly kind: "absent"; readonly states: readonly StateId[]; readonly n: number | null; readonly upperShare: number | null }
  | {
      readonly kind: "measured";
      readonly unit: string;
      /** Median of all pooled values (mean of the two middle ones when even). */
      readonly median: number;
      readonly min: number;
      readonly max: number;
      /** Every pooled value, as measured. */
      readonly values: readonly number[];
      readonly n: number;
      readonly stems: number | null;
      /** Error of one value as a half-width, the largest of the series; null = none stated. */
      readonly plusMinus: number | null;
      /** False when fewer values than the rule pools: the values are shown but do not speak. */
      readonly speaks: boolean;
    };

/** One character's pooled evidence with where it comes from. */
export interface CharacterFinding {
  readonly characterId: CharacterId;
  readonly group: string;
  readonly finding: Finding;
  readonly lookIds: readonly LookId[];
  readonly readingIds: readonly ReadingId[];
  readonly dates: readonly IsoDate[];
  readonly lens: string | null;
  readonly n: number | null;
}

/** How a finding meets a taxon's score. */
export type Meeting = "fits" | "fits-rarely" | "against" | "silent";

/** One independent witness (a group of characters) in the case of one taxon. */
export interface Witness {
  readonly group: string;
  readonly meeting: Meeting;
  /** The weight it speaks with under the rule: the heaviest character of the group that speaks so. */
  readonly weight: number;
  /** The characters of the group behind it, the speaking one first. */
  readonly characterIds: readonly CharacterId[];
  /** Weight of evidence, decibans: for the taxon against the runner-up. Positive = for. null when not computed. */
  readonly decibans: number | null;
}

export interface RivalStanding {
  readonly taxonId: TaxonId;
  readonly left: boolean;
  /** Sum over groups of the heaviest weight that speaks against. */
  readonly againstSum: number;
  readonly against: readonly Witness[];
  readonly onlyRarely: readonly CharacterId[];
  readonly probability: number;
  readonly inRange: boolean;
}

/** The outcome of the visible rule. */
export interface RuleOutcome {
  readonly left: readonly TaxonId[];
  readonly groupsSeen: number;
  readonly outingsWithEvidence: number;
  readonly settled: boolean;
  /** What is still wanting for "settled", in order of the rule; empty when settled or when more than one is left. */
  readonly wanting: readonly (
    | { readonly kind: "rivals-out-by-one-witness"; readonly taxonIds: readonly TaxonId[] }
    | { readonly kind: "too-few-groups"; readonly seen: number; readonly needed: number }
    | { readonly kind: "too-few-outings"; readonly seen: number; readonly needed: number }
    | { readonly kind: "no-deciding-part"; readonly parts: readonly string[] }
  )[];
}

/** A check that would decide, by the visible rule's count and by expected information. */
export interface NextCheck {
  readonly characterId: CharacterId;
  /** How many pairs still to be told apart it separates (sure = 1, usual = 0.5). */
  readonly pairs: number;
  /** How many pairs are still open in all. */
  readonly pairsInAll: number;
  readonly score: number;
  /** Expected information about the taxon, bits; null when not computed. */
  readonly bits: number | null;
  readonly seenIn: readonly StageId[];
  readonly tool: Tool;
  readonly disturbs: boolean;
  /** The dates on which those stages may be expected, from this book's outings and the usual months; null = unknown. */
  readonly from: IsoDate | null;
  readonly to: IsoDate | null;
  /** Something that happened makes it impossible this year. */
  readonly lostThisYear: {
    readonly happeningId: HappeningId;
    readonly kind: Happening["kind"];
    readonly on: IsoDate;
    readonly nextYearBefore: IsoDate | null;
  } | null;
  readonly separates: readonly { readonly a: TaxonId; readonly b: TaxonId; readonly how: "sure" | "usual" }[];
}

export interface HybridPairStanding {
  readonly parents: readonly [TaxonId, TaxonId];
  /** Sum of what speaks against each parent alone; the smaller, the better the pair explains the plant. */
  readonly againstSum: number;
  readonly known: boolean;
}

export interface CaseFile {
  readonly upTo: IsoDate | null;
  readonly word: ResultWord;
  /** The taxa the word is about: one for species and cf., two for one-of-two and the best hybrid pair, else those left. */
  readonly taxonIds: readonly TaxonId[];
  readonly rule: RuleOutcome;
  readonly findings: readonly CharacterFinding[];
  /** The witnesses for and against the leading taxon, strongest first. */
  readonly leader: TaxonId | null;
  readonly runnerUp: TaxonId | null;
  readonly stands: readonly Witness[];
  readonly standsAgainst: readonly Witness[];
  readonly rivals: readonly RivalStanding[];
  readonly noneOfThese: number;
  /** Probability of the leader with every taxon equally likely beforehand; where it differs, the prior did something. */
  readonly leaderWithoutPrior: number | null;
  /** Typicality of the leader, 0-1: how often a plant of that taxon looks this unusual or more; null = not computed. */
  readonly typicality: number | null;
  /** The least number of looks (pooled characters) that would have to be wrong to change the leading taxon, and which. */
  readonly robustness: { readonly leastWrong: number | null; readonly characterIds: readonly CharacterId[] };
  /** Where the visible rule and the probabilities name different taxa. */
  readonly disagreement: null | {
    readonly ruleSays: readonly TaxonId[];
    readonly probabilitySays: TaxonId | "none-of-these";
    readonly probability: number;
  };
  readonly nextChecks: readonly NextCheck[];
  /** Only when no taxon is left. */
  readonly hybridPairs: readonly HybridPairStanding[];
  readonly hybridSigns: readonly { readonly characterId: CharacterId; readonly values: readonly number[]; readonly median: number }[];
  /** The looks to check again first when nothing fits. */
  readonly checkAgain: readonly CharacterId[];
}
