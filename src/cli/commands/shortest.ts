import { scoreLookup, shortestDiagnosis, tools } from "../../engine/index.js";
import type { Character, ReferenceTable } from "../../engine/index.js";
import { say } from "../../words/index.js";
import { findTaxon, readChoice } from "../find.js";
import { runOnTable } from "../with-table.js";
import type { AddVerb } from "../verbs.js";

interface ShortestOptions {
  readonly table?: string;
  readonly lens?: string;
  readonly stage?: string;
}

/** Tools up to the one at hand, and stages of the plant: what may be asked of it now. */
const mayAsk =
  (options: ShortestOptions, table: ReferenceTable) =>
  (character: Character): boolean => {
    const strongest = options.lens === undefined ? tools.length : tools.indexOf(readChoice(options.lens, tools));
    const stage =
      options.stage === undefined
        ? undefined
        : readChoice(
            options.stage,
            table.stages.map((one) => one.id),
          );
    return (
      (character.tool === "computed" || tools.indexOf(character.tool) <= strongest) &&
      (stage === undefined || character.seenIn.length === 0 || character.seenIn.includes(stage))
    );
  };

export const addShortest: AddVerb = (program, terminal) => {
  program
    .command("shortest")
    .description(say("cli.shortest"))
    .argument("<taxon>")
    .option("--table <id>", say("cli.option.table"))
    .option("--lens <tool>", tools.join(", "))
    .option("--stage <id>", say("cli.option.stage"))
    .action(async (text: string, options: ShortestOptions, command) => {
      await runOnTable(terminal, command, options.table, (table) => {
        const taxon = findTaxon(table, text);
        const found = shortestDiagnosis(table, scoreLookup(table), taxon.id, mayAsk(options, table));
        const name = (id: string): string => table.characters.find((one) => one.id === id)?.name ?? id;
        const others = found.inseparable.map((id) => table.taxa.find((one) => one.id === id)?.name ?? id);
        const lines = [
          found.size === 0
            ? say("cli.shortest.none", { taxon: taxon.name })
            : say("cli.shortest.found", {
                taxon: taxon.name,
                size: found.size,
                best: found.best.map(name).join(", "),
                ways: found.howMany,
              }),
          ...(others.length === 0 ? [] : [say("cli.shortest.inseparable", { others: others.join(", ") })]),
        ];
        return { data: found, lines };
      });
    });
};
