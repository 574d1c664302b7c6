import { caseView, standOnFiles, taxaApart } from "../../app/index.js";
import type { CaseView } from "../../contract/index.js";
import { say } from "../../words/index.js";
import { findPlant, findTaxon, readDate } from "../find.js";
import { readText } from "../read-text.js";
import { runOnBook, runPlain } from "../run-verb.js";
import { runOnTable } from "../with-table.js";
import { UsageError } from "../terminal.js";
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

export const addStand: AddVerb = (program, terminal) => {
  program
    .command("stand")
    .description(say("cli.stand"))
    .argument("[plant]")
    .option("--until <date>", say("cli.option.until"))
    .option("--table <file>", say("cli.option.table-file"))
    .option("--looks <file>", say("cli.option.looks-file"))
    .action(async (text: string | undefined, options: StandOptions, command) => {
      const { table, looks } = options;
      if (table !== undefined && looks !== undefined && text === undefined) {
        await runPlain(terminal, command, async () => {
          const report = standOnFiles(await readText(table), await readText(looks));
          const lines = report.specimens.map((one) => `${one.specimen}: ${one.headline}`);
          const problems = report.problems.map((one) => say("cli.table.problem", { where: one.where, text: one.text }));
          return { data: report, lines: [...lines, ...problems], withProblems: report.problems.length > 0 };
        });
        return;
      }
      await runOnBook(terminal, command, async ({ workbench }) => {
        if (text === undefined || table !== undefined || looks !== undefined) throw new UsageError(say("usage.stand"));
        const plant = await findPlant(workbench, text);
        const view = await caseView(workbench, plant.id, options.until === undefined ? undefined : readDate(options.until));
        return { data: view, lines: caseLines(view) };
      });
    });

  program
    .command("next")
    .description(say("cli.next"))
    .argument("[plant]")
    .option("--until <date>", say("cli.option.until"))
    .option("--table <file>", say("cli.option.table-file"))
    .option("--looks <file>", say("cli.option.looks-file"))
    .action(async (text: string | undefined, options: StandOptions, command) => {
      const { table, looks } = options;
      if (table !== undefined && looks !== undefined && text === undefined) {
        await runPlain(terminal, command, async () => {
          const report = standOnFiles(await readText(table), await readText(looks));
          const next = report.specimens.map(({ specimen, nextChecks }) => ({ specimen, nextChecks }));
          const lines = next.map((one) => `${one.specimen}: ${one.nextChecks.map((check) => check.characterId).join(", ")}`);
          const problems = report.problems.map((one) => say("cli.table.problem", { where: one.where, text: one.text }));
          return {
            data: { specimens: next, problems: report.problems },
            lines: [...lines, ...problems],
            withProblems: report.problems.length > 0,
          };
        });
        return;
      }
      await runOnBook(terminal, command, async ({ workbench }) => {
        if (text === undefined || table !== undefined || looks !== undefined) throw new UsageError(say("usage.stand"));
        const plant = await findPlant(workbench, text);
        const view = await caseView(workbench, plant.id, options.until === undefined ? undefined : readDate(options.until));
        const lines = view.decide.length === 0 ? [view.standing.explanation] : checkLines(view);
        return { data: { plantId: plant.id, upTo: view.upTo, decide: view.decide }, lines };
      });
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
