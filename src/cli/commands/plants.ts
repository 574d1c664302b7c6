import { plantList, yearView } from "../../app/index.js";
import { say } from "../../words/index.js";
import { readDate } from "../find.js";
import { runOnBook } from "../run-verb.js";
import type { AddVerb } from "../verbs.js";
import { plainText } from "../verbs.js";

interface UntilOptions {
  readonly until?: string;
}

export const addPlants: AddVerb = (program, terminal) => {
  program
    .command("plants")
    .description(say("cli.plants"))
    .option("--until <date>", say("cli.option.until"))
    .action(async (options: UntilOptions, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        const found = await plantList(workbench, options.until === undefined ? undefined : readDate(options.until));
        const lines = found.plants.map(({ plant, spotName, standing }) =>
          say("cli.plants.row", { id: plant.id, nick: plant.nick, spot: spotName, standing: plainText(standing.headline) }),
        );
        return { data: found, lines: lines.length === 0 ? [say("cli.plants.none")] : lines };
      });
    });

  program
    .command("year")
    .description(say("cli.year"))
    .option("--until <date>", say("cli.option.until"))
    .action(async (options: UntilOptions, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        const year = await yearView(workbench, options.until === undefined ? undefined : readDate(options.until));
        return { data: year, lines: [...year.summary, ...year.due.map((due) => `${due.nick}: ${due.sentence} ${due.when}`.trim())] };
      });
    });
};
