import { randomUUID } from "node:crypto";
import { keepSlip } from "../../app/index.js";
import { slip as slipSchema } from "../../engine/index.js";
import { say } from "../../words/index.js";
import { findPlant, findTable, readChoice, readDate } from "../find.js";
import { runOnBook } from "../run-verb.js";
import type { AddVerb } from "../verbs.js";

interface SlipOptions {
  readonly why: string;
  readonly by: string;
  readonly on?: string;
  readonly role: string;
  readonly qualifier: string;
  readonly id?: string;
}

export const addSlip: AddVerb = (program, terminal) => {
  program
    .command("slip")
    .description(say("cli.slip"))
    .argument("<plant>")
    .argument("<name>")
    .requiredOption("--why <text>", say("cli.option.why"))
    .requiredOption("--by <initials>", say("cli.option.by"))
    .option("--on <date>", say("cli.option.on"))
    .option("--role <role>", "det, conf, vid", "det")
    .option("--qualifier <mark>", "cf., aff., ?", "")
    .option("--id <id>", say("cli.option.id"))
    .action(async (plantText: string, name: string, options: SlipOptions, command) => {
      await runOnBook(terminal, command, async ({ workbench, today }) => {
        const plant = await findPlant(workbench, plantText);
        const table = await findTable(workbench, plant.tableId);
        const taxon = table.taxa.find((one) =>
          [one.id, one.name, ...one.synonyms].some((text) => text.toLowerCase() === name.toLowerCase()),
        );
        const slip = slipSchema.parse({
          id: options.id ?? randomUUID(),
          plantId: plant.id,
          on: options.on === undefined ? today : readDate(options.on),
          by: options.by,
          name: taxon?.name ?? name,
          taxonIds: taxon === undefined ? [] : [taxon.id],
          role: readChoice(options.role, ["det", "conf", "vid"]),
          qualifier: readChoice(options.qualifier, ["", "cf.", "aff.", "?"]),
          why: options.why,
        });
        const edit = await keepSlip(workbench, slip.id, slip);
        return { data: { edit, slip }, lines: [say("cli.edit", { label: edit.label }), say("cli.kept", { id: slip.id })] };
      });
    });
};
