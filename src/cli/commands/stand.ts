import type { Command } from "commander";
import { caseView, standOnFiles, taxaApart, type FileStanding } from "../../app/index.js";
import type { CaseView } from "../../contract/index.js";
import { say } from "../../words/index.js";
import { findPlant, findTaxon, readDate } from "../find.js";
import { readText } from "../read-text.js";
import { runOnBook, runPlain } from "../run-verb.js";
import { runOnTable } from "../with-table.js";
import { UsageError, type Answer, type Terminal } from "../terminal.js";
import type { AddVerb } from "../verbs.js";
import { plainText } from "../verbs.js";

interface StandOptions {
  readonly until?: string;
  readonly table?: string;
  readonly looks?: string;
}

const caseLines = (view: CaseView): readonly string[] => [
  `${view.nick}: ${plainText(view.standing.headline)}`,
  view.standing.explanation,
  ...view.stands.map((line) => `  + ${line.title}: ${line.detail}`),
  ...view.standsAgainst.map((line) => `  - ${line.title}: ${line.detail}`),
  ...view.rivals.map((rival) => `  ${rival.plain}: ${rival.sentence}`),
  ...(view.notice === "" ? [] : [view.notice]),
];

const checkLines = (view: CaseView): readonly string[] =>
  view.decide.map(
    (check) => `  ${[check.title, check.how, check.when, check.why, check.lost ?? ""].filter((text) => text !== "").join("; ")}`,
  );

/** Answers from a table and looks on plain files where both are named and no plant is. @returns false when a book is meant */
const onFiles = async (
  terminal: Terminal,
  command: Command,
  text: string | undefined,
  { table, looks }: StandOptions,
  tell: (specimens: readonly FileStanding[]) => { readonly data: readonly unknown[]; readonly lines: readonly string[] },
): Promise<boolean> => {
  if (table === undefined || looks === undefined || text !== undefined) return false;
  await runPlain(terminal, command, async () => {
    const report = standOnFiles(await readText(table), await readText(looks));
    const { data, lines } = tell(report.specimens);
    const problems = report.problems.map((one) => say("cli.table.problem", { where: one.where, text: one.text }));
    return { data: { ...report, specimens: data }, lines: [...lines, ...problems], withProblems: report.problems.length > 0 };
  });
  return true;
};

/** Answers from the case of a plant of the book; files and a plant mixed, or nothing named, is wrong usage. */
const onPlant = (
  terminal: Terminal,
  command: Command,
  text: string | undefined,
  options: StandOptions,
  tell: (view: CaseView) => Answer,
): Promise<void> => {
  if (text === undefined || options.table !== undefined || options.looks !== undefined) {
    return runPlain(terminal, command, () => Promise.reject(new UsageError(say("usage.stand"))));
  }
  return runOnBook(terminal, command, async ({ workbench }) => {
    const plant = await findPlant(workbench, text);
    return tell(await caseView(workbench, plant.id, options.until === undefined ? undefined : readDate(options.until)));
  });
};

const addCaseVerb = (
  program: Command,
  name: "stand" | "next",
  action: (text: string | undefined, options: StandOptions, command: Command) => Promise<void>,
): void => {
  program
    .command(name)
    .description(say(`cli.${name}`))
    .argument("[plant]")
    .option("--until <date>", say("cli.option.until"))
    .option("--table <file>", say("cli.option.table-file"))
    .option("--looks <file>", say("cli.option.looks-file"))
    .action(action);
};

export const addStand: AddVerb = (program, terminal) => {
  addCaseVerb(program, "stand", async (text, options, command) => {
    const told = await onFiles(terminal, command, text, options, (specimens) => ({
      data: specimens,
      lines: specimens.map((one) => `${one.specimen}: ${one.headline}`),
    }));
    if (told) return;
    await onPlant(terminal, command, text, options, (view) => ({ data: view, lines: caseLines(view) }));
  });

  addCaseVerb(program, "next", async (text, options, command) => {
    const told = await onFiles(terminal, command, text, options, (specimens) => ({
      data: specimens.map(({ specimen, nextChecks }) => ({ specimen, nextChecks })),
      lines: specimens.map((one) => `${one.specimen}: ${one.nextChecks.map((check) => check.characterId).join(", ")}`),
    }));
    if (told) return;
    await onPlant(terminal, command, text, options, (view) => ({
      data: { plantId: view.plantId, upTo: view.upTo, decide: view.decide },
      lines: view.decide.length === 0 ? [view.standing.explanation] : checkLines(view),
    }));
  });

  program
    .command("apart")
    .description(say("cli.apart"))
    .argument("<taxa...>")
    .option("--table <id>", say("cli.option.table"))
    .action(async (texts: readonly string[], options: { readonly table?: string }, command) => {
      await runOnTable(terminal, command, options.table, (table) => {
        const view = taxaApart(
          table,
          texts.map((text) => findTaxon(table, text).id),
        );
        const told = view.rows.filter((row) => row.difference === "sure" || row.difference === "usual");
        const lines = told.map(
          (row) =>
            `  ${say("cli.apart.row", { difference: row.difference, part: row.part, name: row.name, cells: row.cells.map((cell) => cell.text).join(" | ") })}`,
        );
        return {
          data: view,
          lines: [view.taxa.map((taxon) => taxon.plain).join(" | "), ...lines, ...view.notSeparated.map((pair) => pair.sentence)],
        };
      });
    });
};
