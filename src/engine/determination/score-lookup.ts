/** Scores of a table by taxon and character, with "unknown" where nobody says anything. */
import type { CharacterId, TaxonId } from "../base/ids.js";
import type { ReferenceTable, ScoreValue } from "../characters/reference-table.js";

export type ScoreLookup = (taxonId: TaxonId, characterId: CharacterId) => ScoreValue;

const UNKNOWN: ScoreValue = { kind: "unknown" };

/**
 * Several scores of one cell (sources that differ) are united so that no source is overruled in silence: states of any
 * source count, the widest range counts.
 */
const unite = (a: ScoreValue, b: ScoreValue): ScoreValue => {
  if (a.kind === "unknown") return b;
  if (b.kind === "unknown") return a;
  if (a.kind === "states" && b.kind === "states") {
    const usual = [...new Set([...a.usual, ...b.usual])];
    return { kind: "states", usual, rarely: [...new Set([...a.rarely, ...b.rarely])].filter((state) => !usual.includes(state)) };
  }
  if (a.kind === "range" && b.kind === "range") {
    const low = Math.min(a.low, b.low);
    const high = Math.max(a.high, b.high);
    return {
      kind: "range",
      min: Math.min(a.min ?? a.low, b.min ?? b.low),
      low,
      high,
      max: Math.max(a.max ?? a.high, b.max ?? b.high),
    };
  }
  return a.kind === "not-applicable" ? b : a;
};

/** Builds the lookup once; each call then costs two map reads. */
export const scoreLookup = (table: ReferenceTable): ScoreLookup => {
  const byTaxon = new Map<TaxonId, Map<CharacterId, ScoreValue>>();
  for (const score of table.scores) {
    const row = byTaxon.get(score.taxonId) ?? new Map<CharacterId, ScoreValue>();
    byTaxon.set(score.taxonId, row);
    const before = row.get(score.characterId);
    row.set(score.characterId, before === undefined ? score.value : unite(before, score.value));
  }
  return (taxonId, characterId) => byTaxon.get(taxonId)?.get(characterId) ?? UNKNOWN;
};
