/** The next checks of a plant by the visible rule, without the probability engine: for lists and the year. */
import { nextChecks, type CaseByRule, type IsoDate, type NextCheck } from "../engine/index.js";
import type { PlantFile } from "./plant-evidence.js";

export const ruleChecks = (file: PlantFile, rule: CaseByRule, upTo: IsoDate): readonly NextCheck[] =>
  nextChecks(file.table, rule.scores, rule.outcome, rule.findings, file.happenings, upTo, () => null);
