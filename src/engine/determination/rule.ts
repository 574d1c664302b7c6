/**
 * The visible rule: which taxa are still left, and whether the plant is settled. A person can follow it with a pencil. It is
 * not the probability engine, which never rules anything out; where the two part, the case says so.
 */
import type { TaxonId } from "../base/ids.js";
import type { SettledRule } from "../characters/book-content.js";
import type { Character } from "../characters/character.js";
import type { ReferenceTable, Taxon } from "../characters/reference-table.js";
import type { CharacterFinding, Meeting, RuleOutcome, Witness } from "./case-file.js";
import { maySpeakAgainst, meet } from "./meeting.js";
import type { ScoreLookup } from "./score-lookup.js";

/** A taxon before the rule: what speaks against it by independent witness, and where it fits only as a rarity. */
export interface TaxonBeforeRule {
  readonly taxonId: TaxonId;
  readonly left: boolean;
  readonly againstSum: number;
  readonly against: readonly Witness[];
  readonly onlyRarely: readonly CharacterFinding["characterId"][];
  readonly meetings: ReadonlyMap<CharacterFinding["characterId"], Meeting>;
}

/** Characters of one group speak as one witness: the heaviest that speaks so gives the weight. */
export const witnessesOf = (
  findings: readonly CharacterFinding[],
  characters: ReadonlyMap<string, Character>,
  meetings: ReadonlyMap<string, Meeting>,
  which: (meeting: Meeting, character: Character) => boolean,
): readonly Witness[] => {
  const groups = new Map<string, { meeting: Meeting; members: Character[] }>();
  for (const finding of findings) {
    const character = characters.get(finding.characterId);
    const meeting = meetings.get(finding.characterId) ?? "silent";
    if (character === undefined || !which(meeting, character)) continue;
    const group = groups.get(finding.group) ?? { meeting, members: [] };
    group.members.push(character);
    groups.set(finding.group, group);
  }
  return [...groups]
    .map(([group, { meeting, members }]): Witness => {
      const sorted = members.toSorted((a, b) => b.weight - a.weight);
      return {
        group,
        meeting,
        weight: sorted[0]?.weight ?? 0,
        characterIds: sorted.map((character) => character.id),
        decibans: null,
      };
    })
    .toSorted((a, b) => b.weight - a.weight || a.group.localeCompare(b.group, "en"));
};

/** Every taxon of the table before the rule, in table order. */
export const weighTaxa = (
  table: ReferenceTable,
  scores: ScoreLookup,
  findings: readonly CharacterFinding[],
  rule: SettledRule,
): readonly TaxonBeforeRule[] => {
  const characters = new Map<string, Character>(table.characters.map((character) => [character.id, character]));
  return table.taxa.map((taxon) => {
    const meetings = new Map(
      findings.map((finding): [CharacterFinding["characterId"], Meeting] => [
        finding.characterId,
        meet(finding.finding, scores(taxon.id, finding.characterId)),
      ]),
    );
    const against = witnessesOf(
      findings,
      characters,
      meetings,
      (meeting, character) => meeting === "against" && maySpeakAgainst(character),
    );
    const againstSum = against.reduce((sum, witness) => sum + witness.weight, 0);
    return {
      taxonId: taxon.id,
      left: againstSum < rule.outAt,
      againstSum,
      against,
      onlyRarely: findings.filter((finding) => meetings.get(finding.characterId) === "fits-rarely").map((finding) => finding.characterId),
      meetings,
    };
  });
};

/** The groups that were seen at all, of characters that may speak. */
const groupsSeen = (findings: readonly CharacterFinding[], characters: ReadonlyMap<string, Character>): ReadonlySet<string> =>
  new Set(
    findings
      .filter((finding) => {
        const character = characters.get(finding.characterId);
        return character !== undefined && maySpeakAgainst(character);
      })
      .map((finding) => finding.group),
  );

/** The rivals that must be excluded: those the keeper named, else every taxon expected in the county. */
export const rivalsToExclude = (taxa: readonly Taxon[], named: readonly TaxonId[]): readonly TaxonId[] =>
  taxa.filter((taxon) => (named.length === 0 ? taxon.expectedInCounty : named.includes(taxon.id))).map((taxon) => taxon.id);

/**
 * The rule's outcome. Settled: exactly one taxon left, every rival spoken against by enough independent witnesses, enough
 * groups seen, on enough outings, at least one from a deciding part.
 * @param outingCount outings with any look or reading that counts
 */
export const applyRule = (
  table: ReferenceTable,
  weighed: readonly TaxonBeforeRule[],
  findings: readonly CharacterFinding[],
  outingCount: number,
  rivals: readonly TaxonId[],
  rule: SettledRule,
): RuleOutcome => {
  const characters = new Map<string, Character>(table.characters.map((character) => [character.id, character]));
  const left = weighed.filter((taxon) => taxon.left).map((taxon) => taxon.taxonId);
  const seen = groupsSeen(findings, characters);
  const wanting: RuleOutcome["wanting"][number][] = [];
  if (left.length === 1) {
    const thin = weighed.filter((taxon) => !taxon.left && rivals.includes(taxon.taxonId) && taxon.against.length < rule.witnessesPerRival);
    if (thin.length > 0) wanting.push({ kind: "rivals-out-by-one-witness", taxonIds: thin.map((taxon) => taxon.taxonId) });
    if (seen.size < rule.groupsSeen) wanting.push({ kind: "too-few-groups", seen: seen.size, needed: rule.groupsSeen });
    if (outingCount < rule.outings) wanting.push({ kind: "too-few-outings", seen: outingCount, needed: rule.outings });
    const deciding = findings.some((finding) => {
      const character = characters.get(finding.characterId);
      return (
        character !== undefined &&
        maySpeakAgainst(character) &&
        (rule.oneFromParts.includes(character.part) || rule.oneFromParts.includes(finding.group))
      );
    });
    if (!deciding) wanting.push({ kind: "no-deciding-part", parts: rule.oneFromParts });
  }
  return { left, groupsSeen: seen.size, outingsWithEvidence: outingCount, settled: left.length === 1 && wanting.length === 0, wanting };
};
