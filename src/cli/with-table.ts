/** A verb that asks a reference table: one of the book, or a CSV file, without any book. */
import type { Command } from "commander";
import { tableFromCsv } from "../app/index.js";
import type { ReferenceTable } from "../engine/index.js";
import { say } from "../words/index.js";
import { findTable } from "./find.js";
import { readText } from "./read-text.js";
import { runOnBook, runPlain } from "./run-verb.js";
import type { Answer, Terminal } from "./terminal.js";

/** Whether a `--table` names a file: it ends in .csv. */
export const isTableFile = (table: string | undefined): table is string => table?.toLowerCase().endsWith(".csv") === true;

/** Reads a table file; what is wrong in it is the answer. */
export const askTableFile = async (path: string, ask: (table: ReferenceTable) => Answer | Promise<Answer>): Promise<Answer> => {
  const { table, problems } = tableFromCsv(await readText(path));
  if (table !== null) return ask(table);
  return {
    data: { problems },
    lines: problems.map((one) => say("cli.table.problem", { where: one.where, text: one.text })),
    withProblems: true,
  };
};

export const runOnTable = (
  terminal: Terminal,
  command: Command,
  table: string | undefined,
  ask: (table: ReferenceTable) => Answer,
): Promise<void> =>
  isTableFile(table)
    ? runPlain(terminal, command, () => askTableFile(table, ask))
    : runOnBook(terminal, command, async ({ workbench }) => ask(await findTable(workbench, table)));
