/** What tells taxa apart: which characters separate each pair, and the smallest sets of characters that single one out. */
import type { CharacterId, TaxonId } from "../base/ids.js";
import type { Character } from "../characters/character.js";
import type { ReferenceTable } from "../characters/reference-table.js";
import { difference, maySpeakAgainst } from "./meeting.js";
import type { ScoreLookup } from "./score-lookup.js";

export interface Separation {
  readonly characterId: CharacterId;
  readonly how: "sure" | "usual";
}

/** The characters of the table by which two taxa differ, in table order. */
export const separations = (table: ReferenceTable, scores: ScoreLookup, a: TaxonId, b: TaxonId): readonly Separation[] =>
  table.characters.filter(maySpeakAgainst).flatMap((character) => {
    const how = difference(scores(a, character.id), scores(b, character.id));
    return how === "sure" || how === "usual" ? [{ characterId: character.id, how }] : [];
  });

export interface ShortestDiagnosis {
  /** How many characters are needed; 0 when no set of the allowed size does it. */
  readonly size: number;
  /** The set with the greatest sum of weights; the first in table order among equals. */
  readonly best: readonly CharacterId[];
  /** How many sets of that size do it. */
  readonly howMany: number;
  /** Taxa that no character surely separates from this one. */
  readonly inseparable: readonly TaxonId[];
}

/**
 * The smallest sets of characters that surely separate a taxon from every other: exact minimum set cover by increasing size.
 * Cost grows with the number of characters to the power of the size; sizes above `largest` are not tried.
 * @param allowed which characters may be used (a month, a lens)
 */
export const shortestDiagnosis = (
  table: ReferenceTable,
  scores: ScoreLookup,
  taxonId: TaxonId,
  allowed: (character: Character) => boolean = () => true,
  largest = 5,
): ShortestDiagnosis => {
  const others = table.taxa.filter((taxon) => taxon.id !== taxonId);
  const candidates = table.characters.filter(maySpeakAgainst).filter(allowed);
  // One bit per rival: which of them a character surely separates.
  const covers = candidates.map((character) =>
    others.map((other) => difference(scores(taxonId, character.id), scores(other.id, character.id)) === "sure"),
  );
  const inseparable = others.filter((_, index) => !covers.some((cover) => cover[index])).map((other) => other.id);
  const wanted = others.map((_, index) => index).filter((index) => covers.some((cover) => cover[index]));
  if (wanted.length === 0) return { size: 0, best: [], howMany: 0, inseparable };
  for (let size = 1; size <= Math.min(largest, candidates.length); size += 1) {
    let howMany = 0;
    let best: { weight: number; chosen: readonly number[] } | null = null;
    const choose = (from: number, chosen: readonly number[]): void => {
      if (chosen.length === size) {
        if (!wanted.every((index) => chosen.some((c) => covers[c]?.[index]))) return;
        howMany += 1;
        const weight = chosen.reduce((sum, c) => sum + (candidates[c]?.weight ?? 0), 0);
        if (best === null || weight > best.weight) best = { weight, chosen };
        return;
      }
      for (let c = from; c <= candidates.length - (size - chosen.length); c += 1) choose(c + 1, [...chosen, c]);
    };
    choose(0, []);
    const found = best as { weight: number; chosen: readonly number[] } | null;
    if (found !== null) {
      return { size, best: found.chosen.flatMap((c) => candidates[c]?.id ?? []), howMany, inseparable };
    }
  }
  return { size: 0, best: [], howMany: 0, inseparable };
};
