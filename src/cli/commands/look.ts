import { randomUUID } from "node:crypto";
import { writeRecord } from "../../app/index.js";
import { look as lookSchema } from "../../engine/index.js";
import type { Character } from "../../engine/index.js";
import { say } from "../../words/index.js";
import { findCharacter, findOuting, findPlant, findTable, readChoice, readWhole } from "../find.js";
import { runOnBook } from "../run-verb.js";
import { UsageError } from "../terminal.js";
import type { AddVerb } from "../verbs.js";

/** A state by id or name. */
const findState = (character: Character, text: string): string => {
  const states = character.answer.kind === "states" ? character.answer.states : [];
  const found = states.find((state) => state.id === text || state.name.toLowerCase() === text.toLowerCase());
  if (found === undefined)
    throw new UsageError(say("usage.state", { character: character.name, text, has: states.map((state) => state.id).join(", ") || "—" }));
  return found.id;
};

interface LookOptions {
  readonly notThere?: boolean;
  readonly cannotTell?: boolean;
  readonly lens?: string;
  readonly n?: string;
  readonly outing?: string;
  readonly sure: string;
  readonly by: string;
  readonly note: string;
  readonly id?: string;
}

export const addLook: AddVerb = (program, terminal) => {
  program
    .command("look")
    .description(say("cli.look"))
    .argument("<plant>")
    .argument("<character>")
    .argument("[states...]")
    .option("--not-there", say("cli.option.not-there"))
    .option("--cannot-tell", say("cli.option.cannot-tell"))
    .option("--lens <power>", say("cli.option.lens"))
    .option("--n <count>", say("cli.option.n"))
    .option("--outing <id-or-date>", say("cli.option.outing"))
    .option("--sure <how>", "sure, fairly, between-two", "sure")
    .option("--by <initials>", say("cli.option.by"), "")
    .option("--note <text>", say("cli.option.note"), "")
    .option("--id <id>", say("cli.option.id"))
    .action(async (plantText: string, characterText: string, states: readonly string[], options: LookOptions, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        const ways = [states.length > 0, options.notThere === true, options.cannotTell === true].filter(Boolean);
        if (ways.length !== 1) throw new UsageError(say("usage.look-one"));
        const plant = await findPlant(workbench, plantText);
        const character = findCharacter(await findTable(workbench, plant.tableId), characterText);
        const outing = await findOuting(workbench, options.outing);
        const look = lookSchema.parse({
          id: options.id ?? randomUUID(),
          plantId: plant.id,
          outingId: outing.id,
          characterId: character.id,
          date: outing.date,
          status: options.notThere === true ? "not-there" : options.cannotTell === true ? "could-not-tell" : "seen",
          states: states.map((text) => findState(character, text)),
          sure: readChoice(options.sure, ["sure", "fairly", "between-two"]),
          lens: options.lens ?? null,
          n: options.n === undefined ? null : readWhole(options.n, 1, 100_000),
          by: options.by,
          note: options.note,
        });
        const edit = await writeRecord(workbench, "look", look.id, look, options.by);
        return { data: { edit, look }, lines: [say("cli.edit", { label: edit.label }), say("cli.kept", { id: look.id })] };
      });
    });
};
