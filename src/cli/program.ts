/** The command line: `stipule <verb>`. Verbs are added here; each has its own file. */
import { homedir } from "node:os";
import path from "node:path";
import { Command, CommanderError, Option } from "commander";
import { say } from "../words/index.js";
import { addBegin } from "./commands/begin.js";
import { addBring } from "./commands/bring.js";
import { addClock } from "./commands/clock.js";
import { addLook } from "./commands/look.js";
import { addOnFiles } from "./commands/on-files.js";
import { addOuting } from "./commands/outing.js";
import { addPage } from "./commands/page.js";
import { addPlaces } from "./commands/places.js";
import { addPlants } from "./commands/plants.js";
import { addRead } from "./commands/read.js";
import { addServe } from "./commands/serve.js";
import { addShortest } from "./commands/shortest.js";
import { addSlip } from "./commands/slip.js";
import { addStand } from "./commands/stand.js";
import { addTable } from "./commands/table.js";
import { addTray } from "./commands/tray.js";
import { addUpkeep } from "./commands/upkeep.js";
import type { Terminal } from "./terminal.js";
import { exitCodes } from "./terminal.js";
import type { AddVerb } from "./verbs.js";

/** In the order of the year's work; the help lists them so. */
const verbs: readonly AddVerb[] = [
  addServe,
  addBegin,
  addOuting,
  addBring,
  addClock,
  addTray,
  addLook,
  addRead,
  addPlants,
  addStand,
  addShortest,
  addTable,
  addSlip,
  addPage,
  addPlaces,
  addUpkeep,
  addOnFiles,
];

const globalOptions = (): readonly Option[] => [
  new Option("--book <folder>", say("cli.option.book")),
  new Option("--json", say("cli.option.json")),
  new Option("--dry", say("cli.option.dry")),
];

const programOf = (terminal: Terminal): Command => {
  const program = new Command("stipule");
  program
    .description(say("cli.description"))
    .addHelpText("after", `\n${say("cli.exit-codes")}`)
    .exitOverride()
    .configureOutput({ writeOut: (text) => terminal.out(text.trimEnd()), writeErr: (text) => terminal.err(text.trimEnd()) });
  for (const option of globalOptions()) program.addOption(option);
  for (const add of verbs) add(program, terminal);
  program
    .command("exit-codes")
    .description(say("cli.exit-codes.summary"))
    .action(() => terminal.out(say("cli.exit-codes")));
  for (const command of [...program.commands, ...program.commands.flatMap((one) => one.commands)]) {
    // Global options may stand behind the verb as well as before it.
    for (const option of globalOptions()) command.addOption(option);
    command.exitOverride().configureOutput(program.configureOutput());
  }
  return program;
};

/** Runs one command line; the exit code is set on the terminal. @param words what stands behind the program's name */
export const run = async (words: readonly string[], terminal: Terminal): Promise<void> => {
  if (words[0] === "help" && words[1] === "exit-codes") {
    terminal.out(say("cli.exit-codes"));
    return;
  }
  try {
    await programOf(terminal).parseAsync([...words], { from: "user" });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    // Help and version end this way too, with code 0; commander has written what there is to say.
    terminal.setExitCode(error.exitCode === 0 ? exitCodes.done : exitCodes.usage);
  }
};

/** The terminal of this process. */
export const processTerminal = (): Terminal => ({
  out: (text) => process.stdout.write(`${text}\n`),
  err: (text) => process.stderr.write(`${text}\n`),
  env: process.env,
  home: homedir(),
  clock: () => new Date(),
  programRoot: path.resolve(import.meta.dirname, "..", ".."),
  setExitCode: (code) => {
    process.exitCode = code;
  },
});
