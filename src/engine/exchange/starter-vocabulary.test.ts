import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { patternTable, starterCharacters, starterStages, starterViews } from "./starter-vocabulary.js";

const vocabulary = (name: string): unknown =>
  JSON.parse(readFileSync(fileURLToPath(new URL(`../../../vocab/${name}.json`, import.meta.url)), "utf8"));

it("gives stages, characters and views that refer to one another", () => {
  const stages = starterStages(vocabulary("stages"));
  const characters = starterCharacters(vocabulary("characters"));
  const ids = new Set<string>(stages.map((stage) => stage.id));
  expect(stages).toHaveLength(11);
  expect(characters.length).toBeGreaterThan(100);
  for (const seen of [...characters.flatMap((c) => c.seenIn), ...starterViews().flatMap((v) => v.stages)]) expect(ids).toContain(seen);
  const known = new Map(characters.map((c) => [c.id, c]));
  for (const { onlyIf } of characters) {
    if (onlyIf === null) continue;
    const parent = known.get(onlyIf.character)!;
    const { answer } = parent;
    if (answer.kind === "states") for (const state of onlyIf.states) expect(answer.states.map((s) => s.id)).toContain(state);
  }
  expect(patternTable(characters, stages, { title: "Pattern", notice: "" }).taxa).toEqual([]);
});
