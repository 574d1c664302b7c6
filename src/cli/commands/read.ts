import { randomUUID } from "node:crypto";
import { keepReading } from "../../app/index.js";
import { reading as readingSchema, readingSeries } from "../../engine/index.js";
import { say } from "../../words/index.js";
import { findCharacter, findOuting, findPlant, findTable, readWhole } from "../find.js";
import { runOnBook } from "../run-verb.js";
import { UsageError } from "../terminal.js";
import type { AddVerb } from "../verbs.js";

interface ReadOptions {
  readonly unit?: string;
  readonly outing?: string;
  readonly stems?: string;
  readonly method: string;
  readonly by: string;
  readonly note: string;
  readonly id?: string;
  readonly confirm?: boolean;
}

export const addRead: AddVerb = (program, terminal) => {
  program
    .command("read")
    .description(say("cli.read"))
    .argument("<plant>")
    .argument("<character>")
    .argument("<values...>")
    .option("--unit <unit>", say("cli.option.unit"))
    .option("--outing <id-or-date>", say("cli.option.outing"))
    .option("--stems <count>", say("cli.option.stems"))
    .option("--method <text>", say("cli.option.method"), "ruler")
    .option("--by <initials>", say("cli.option.by"), "")
    .option("--note <text>", say("cli.option.note"), "")
    .option("--id <id>", say("cli.option.id"))
    .option("--confirm", say("cli.option.confirm"))
    .action(async (plantText: string, characterText: string, values: readonly string[], options: ReadOptions, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        const plant = await findPlant(workbench, plantText);
        const character = findCharacter(await findTable(workbench, plant.tableId), characterText);
        const outing = await findOuting(workbench, options.outing);
        const unit = character.answer.kind === "measure" ? character.answer.unit : "";
        const series = readingSeries([...values, ...(options.unit === undefined ? [] : [options.unit])].join(" "), { unit });
        if (!series.ok) throw new UsageError(series.problem.text);
        const reading = readingSchema.parse({
          id: options.id ?? randomUUID(),
          plantId: plant.id,
          outingId: outing.id,
          characterId: character.id,
          date: outing.date,
          unit,
          values: [...series.value.values],
          stems: options.stems === undefined ? null : readWhole(options.stems, 1, 10_000),
          method: options.method,
          by: options.by,
          note: options.note,
        });
        const edit = await keepReading(workbench, reading.id, reading, options.confirm === true);
        return { data: { edit, reading }, lines: [say("cli.edit", { label: edit.label }), say("cli.kept", { id: reading.id })] };
      });
    });
};
