import { randomUUID } from "node:crypto";
import { listOutings, writeRecord } from "../../app/index.js";
import { outing as outingSchema } from "../../engine/index.js";
import { say } from "../../words/index.js";
import { readDate } from "../find.js";
import { runOnBook } from "../run-verb.js";
import type { AddVerb } from "../verbs.js";

interface OutingOptions {
  readonly on?: string;
  readonly goal: string;
  readonly weather: string;
  readonly people: string;
  readonly note: string;
  readonly id?: string;
}

export const addOuting: AddVerb = (program, terminal) => {
  program
    .command("outing")
    .description(say("cli.outing"))
    .option("--on <date>", say("cli.option.on"))
    .option("--goal <text>", say("cli.option.goal"), "")
    .option("--weather <text>", say("cli.option.weather"), "")
    .option("--people <initials>", say("cli.option.people"), "")
    .option("--note <text>", say("cli.option.note"), "")
    .option("--id <id>", say("cli.option.id"))
    .action(async (options: OutingOptions, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        if (options.on === undefined) {
          const outings = await listOutings(workbench);
          const row = (one: (typeof outings)[number]): string =>
            say("cli.outing.row", { id: one.id, date: one.date, goal: one.goal, photos: one.photoCount, looks: one.lookCount });
          return { data: { outings }, lines: outings.map(row) };
        }
        const outing = outingSchema.parse({
          id: options.id ?? randomUUID(),
          date: readDate(options.on),
          goal: options.goal,
          weather: options.weather,
          people: options.people.split(/[,\s]+/).filter((person) => person !== ""),
          note: options.note,
        });
        const edit = await writeRecord(workbench, "outing", outing.id, outing);
        return { data: { edit, outing }, lines: [say("cli.edit", { label: edit.label }), say("cli.kept", { id: outing.id })] };
      });
    });
};
