/** How what was found meets what a table says: fits, fits only as a rarity, speaks against, or says nothing. */
import type { Character } from "../characters/character.js";
import type { ScoreValue } from "../characters/reference-table.js";
import type { Finding, Meeting } from "./case-file.js";

/** The least weight with which a character may speak against a taxon under the visible rule. */
export const LEAST_SPEAKING_WEIGHT = 2;

/** A character that may rule taxa out: not a support, not a hybrid check, and of some weight. */
export const maySpeakAgainst = (character: Character): boolean => character.role === "taxa" && character.weight >= LEAST_SPEAKING_WEIGHT;

/**
 * Whether a finding fits a score. States: any seen state among the usual ones fits, else any among the rare ones fits rarely,
 * else it speaks against. Measures: the median within low-high fits, within the outer limits fits rarely, else against.
 * Unknown, not applicable, and too few values are silent.
 */
export const meet = (finding: Finding, score: ScoreValue): Meeting => {
  switch (score.kind) {
    case "unknown":
    case "not-applicable":
      return "silent";
    case "states": {
      if (finding.kind === "measured") return "silent";
      if (finding.states.some((state) => score.usual.includes(state))) return "fits";
      return finding.states.some((state) => score.rarely.includes(state)) ? "fits-rarely" : "against";
    }
    case "range": {
      if (finding.kind !== "measured" || !finding.speaks) return "silent";
      const { median } = finding;
      if (median >= score.low && median <= score.high) return "fits";
      return median >= (score.min ?? score.low) && median <= (score.max ?? score.high) ? "fits-rarely" : "against";
    }
  }
};

/** How two taxa differ in a character: surely (nothing shared, even rarely), usually (the usual values do not meet), or not. */
export const difference = (a: ScoreValue, b: ScoreValue): "sure" | "usual" | "none" | "silent" => {
  if (a.kind === "states" && b.kind === "states") {
    const meets = (left: readonly string[], right: readonly string[]): boolean => left.some((state) => right.includes(state));
    if (!meets([...a.usual, ...a.rarely], [...b.usual, ...b.rarely])) return "sure";
    return meets(a.usual, b.usual) ? "none" : "usual";
  }
  if (a.kind === "range" && b.kind === "range") {
    if ((a.max ?? a.high) < (b.min ?? b.low) || (b.max ?? b.high) < (a.min ?? a.low)) return "sure";
    return a.high < b.low || b.high < a.low ? "usual" : "none";
  }
  return "silent";
};
