/** What comes with Stipule for a book of one's own: stages, views, and reference tables that can be taken in. */
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { patternTable, readTableCsv, starterCharacters, starterStages, starterViews, type Stage, type View } from "../engine/index.js";
import { say } from "../words/index.js";
import { readDemo } from "./demo-file.js";
import type { StarterTable } from "./tables.js";

const readJson = async (programRoot: string, name: string): Promise<unknown> =>
  JSON.parse(await readFile(join(programRoot, "vocab", name), "utf8")) as unknown;

/** The stages and views a new book begins with. */
export const starterVocabulary = async (
  programRoot: string,
): Promise<{ readonly stages: readonly Stage[]; readonly views: readonly View[] }> => ({
  stages: starterStages(await readJson(programRoot, "stages.json")),
  views: starterViews(),
});

/** The tables that come with Stipule; each is read only when it is asked for. */
export const starterTables = (programRoot: string): readonly StarterTable[] => [
  {
    key: "willowherbs",
    title: say("starter.willowherbs"),
    notice: say("starter.willowherbs-notice"),
    read: async () => {
      const { content } = await readDemo(programRoot);
      const [table] = content.tables;
      if (table === undefined) throw new TypeError("the demo year has no table");
      return table;
    },
  },
  {
    key: "irises",
    title: say("starter.irises"),
    notice: say("starter.irises-notice"),
    read: async () => {
      const csv = await readFile(join(programRoot, "starter-tables", "irises.csv"), "utf8");
      const { stages } = await starterVocabulary(programRoot);
      const reading = readTableCsv(csv, { id: "irises", title: "", stages });
      if (reading.table === null) throw new TypeError(`starter-tables/irises.csv: ${reading.problems[0]?.text ?? ""}`);
      return reading.table;
    },
  },
  {
    key: "pattern",
    title: say("starter.pattern"),
    notice: say("starter.pattern-notice"),
    read: async () => {
      const { stages } = await starterVocabulary(programRoot);
      const words = { title: say("starter.pattern"), notice: say("starter.pattern-notice") };
      return patternTable(starterCharacters(await readJson(programRoot, "characters.json")), stages, words);
    },
  },
];
