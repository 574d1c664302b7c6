/** Sentences of a check that would decide: how, when, why. */
import type { IsoDate, NextCheck, ReferenceTable, ScoreLookup, StateId } from "../engine/index.js";
import { listText, say, spansText } from "../words/index.js";
import { scoreText, shortDay, toolText, type TableWords } from "./case-words.js";

/** "would tell square-stalked from short-fruited willowherb" */
export const checkWhy = (words: TableWords, check: NextCheck): string => {
  const short = (id: NextCheck["separates"][number]["a"]): string => spansText(words.shortTaxon(id));
  const [first, ...others] = check.separates;
  if (first === undefined) return "";
  if (others.length === 0) return say(first.how === "sure" ? "check.why" : "check.why-usually", { a: short(first.a), b: short(first.b) });
  const named = new Set(check.separates.flatMap(({ a, b }) => [a, b]));
  // A rival against one that is left, several times: name the one and list the others.
  const shared = [...named].find((id) => check.separates.every(({ a, b }) => a === id || b === id));
  if (shared !== undefined && named.size <= 4) {
    return say("check.why", { a: short(shared), b: listText([...named].filter((id) => id !== shared).map(short), "and") });
  }
  return say("check.why-many", { pairs: check.separates.length, all: check.pairsInAll });
};

/** "can be seen 1 September to 20 November"; "now, until 20 November". */
export const checkWhen = (table: ReferenceTable, check: NextCheck, day: IsoDate): string => {
  if (check.from === null || check.to === null) {
    const names = table.stages.filter((stage) => check.seenIn.includes(stage.id)).map((stage) => stage.name);
    return say("check.no-window", { stages: listText(names, "or") });
  }
  return check.from <= day
    ? say("check.now", { to: shortDay(check.to) })
    : say("check.window", { from: shortDay(check.from), to: shortDay(check.to) });
};

/** "long leafy runners above ground or leafy rosettes at the stem foot; no tool; part, do not pull or dig" */
export const checkHow = (words: TableWords, scores: ScoreLookup, check: NextCheck): string => {
  const character = words.character(check.characterId);
  if (character === undefined) return "";
  const taxa = [...new Set(check.separates.flatMap(({ a, b }) => [a, b]))];
  const values = taxa.map((id) => scores(id, check.characterId));
  const tool = toolText(check.tool);
  const states: StateId[] = [...new Set(values.flatMap((value) => (value.kind === "states" ? value.usual : [])))];
  const expected =
    states.length > 0
      ? words.stateNames(check.characterId, states, "or")
      : listText(
          [...new Set(values.flatMap((value) => (value.kind === "range" ? [scoreText(words, check.characterId, value)] : [])))],
          "or",
        );
  const how = expected === "" ? tool : say("check.how", { states: expected, tool });
  return check.disturbs ? `${how}; ${say("check.disturbs")}` : how;
};
