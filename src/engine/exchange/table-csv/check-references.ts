/** What points to nothing in a table: parents, stages, states of absence, sources, hybrids; and characters in a circle. */
import type { ReferenceTable } from "../../characters/reference-table.js";
import type { Collector } from "./collector.js";

/** Adds a problem for each. */
export const checkReferences = (table: ReferenceTable, out: Collector): void => {
  const characters = new Map(table.characters.map((character) => [character.id as string, character]));
  const known = {
    stages: new Set<string>(table.stages.map((stage) => stage.id)),
    sources: new Set<string>(table.sources.map((source) => source.id)),
    taxa: new Set<string>(table.taxa.map((taxon) => taxon.id)),
  };
  for (const character of table.characters) {
    const where = `column ${character.id}`;
    for (const stage of character.seenIn)
      if (!known.stages.has(stage))
        out.add("unknown-stage", `${where}, #seen in`, `There is no stage "${stage}". There are: ${[...known.stages].join(", ")}.`, stage);
    if (character.onlyIf !== null && !characters.has(character.onlyIf.character))
      out.add("unknown-character", `${where}, #only if`, "There is no column of this character.", character.onlyIf.character);
    const gate = characters.get(character.onlyIf?.character ?? "");
    if (gate?.answer.kind === "states") {
      const has = new Set<string>(gate.answer.states.map((state) => state.id));
      for (const id of character.onlyIf?.states ?? [])
        if (!has.has(id)) out.add("unknown-state", `${where}, #only if`, `"${id}" is no state of ${gate.id}.`, id);
    }
    const { answer } = character;
    if (answer.kind === "ratio") {
      for (const id of [answer.numerator, answer.denominator])
        if (!characters.has(id)) out.add("unknown-character", `${where}, #kind`, "A ratio needs both its measures as columns.", id);
      // Values are divided as they stand: centimetres by millimetres would be wrong by ten.
      const [above, below] = [characters.get(answer.numerator)?.answer, characters.get(answer.denominator)?.answer];
      if (above?.kind === "measure" && below?.kind === "measure" && above.unit !== below.unit)
        out.add(
          "ratio-of-units",
          `${where}, #kind`,
          `A ratio needs both its measures in one unit: ${answer.numerator} is in ${above.unit || "none"}, ${answer.denominator} in ${below.unit || "none"}. Change one of the two columns.`,
          character.id,
        );
    }
    if (answer.kind === "states" && answer.absence !== null && !answer.states.some((state) => state.id === answer.absence)) {
      out.add("unknown-state", `${where}, #absence`, `"${answer.absence}" is no state of this character.`, answer.absence);
    }
    // A character that waits for itself, by however many steps, can never be asked.
    for (
      let parent = character.onlyIf?.character, steps = 0;
      parent !== undefined;
      parent = characters.get(parent)?.onlyIf?.character, steps += 1
    ) {
      if (parent === character.id || steps > table.characters.length) {
        out.add(
          "circle",
          `${where}, #only if`,
          "This character depends on itself in a circle. Remove one of the conditions.",
          character.id,
        );
        break;
      }
    }
  }
  for (const score of table.scores) {
    if (score.sourceId !== null && !known.sources.has(score.sourceId))
      out.add("unknown-source", `taxon ${score.taxonId}`, "Add a row `#source, id, citation` for it.", score.sourceId);
    if (!known.taxa.has(score.taxonId)) out.add("unknown-taxon", "a #score row", "There is no row of this taxon.", score.taxonId);
  }
  for (const { parents } of table.knownHybrids)
    for (const parent of parents)
      if (!known.taxa.has(parent)) out.add("unknown-taxon", "a #hybrid row", "There is no row of this taxon.", parent);
};
