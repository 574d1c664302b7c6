/** When nothing fits: which two taxa, mixed, would explain every character. A ranking of questions, never a name. */
import type { ReferenceTable } from "../characters/reference-table.js";
import type { CharacterFinding, HybridPairStanding } from "./case-file.js";
import { maySpeakAgainst } from "./meeting.js";
import type { TaxonBeforeRule } from "./rule.js";

/**
 * Pairs of taxa such that no recorded character speaks against both, by the sum of what speaks against each alone: each
 * character then belongs to one of the two. Equal sums keep table order.
 */
export const hybridPairs = (
  table: ReferenceTable,
  weighed: readonly TaxonBeforeRule[],
  findings: readonly CharacterFinding[],
): readonly HybridPairStanding[] => {
  const speaking = findings.filter((finding) => {
    const character = table.characters.find((c) => c.id === finding.characterId);
    return character !== undefined && maySpeakAgainst(character);
  });
  const pairs: HybridPairStanding[] = [];
  weighed.forEach((a, index) => {
    for (const b of weighed.slice(index + 1)) {
      const againstBoth = speaking.some(
        (finding) => a.meetings.get(finding.characterId) === "against" && b.meetings.get(finding.characterId) === "against",
      );
      if (againstBoth) continue;
      const known = table.knownHybrids.some(
        ({ parents: [p, q] }) => (p === a.taxonId && q === b.taxonId) || (p === b.taxonId && q === a.taxonId),
      );
      pairs.push({ parents: [a.taxonId, b.taxonId], againstSum: a.againstSum + b.againstSum, known });
    }
  });
  return pairs.toSorted((a, b) => a.againstSum - b.againstSum);
};
