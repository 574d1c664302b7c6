import { removeTable, tableCsv, takeTableCsv } from "../../app/index.js";
import { tableId } from "../../engine/index.js";
import { say } from "../../words/index.js";
import { findTable } from "../find.js";
import { readText } from "../read-text.js";
import { runOnBook } from "../run-verb.js";
import { UsageError } from "../terminal.js";
import type { Answer } from "../terminal.js";
import type { AddVerb } from "../verbs.js";

export const addTable: AddVerb = (program, terminal) => {
  const table = program.command("table").description(say("cli.table"));

  table
    .command("list", { isDefault: true })
    .description(say("cli.table.list"))
    .action(async (_options: unknown, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        const tables = await workbench.store.tables();
        const lines = tables.map((one) =>
          say("cli.table.row", {
            id: one.id,
            title: one.title,
            taxa: one.taxonCount,
            characters: one.characterCount,
            scores: one.scoreCount,
          }),
        );
        return { data: { tables }, lines: lines.length === 0 ? [say("cli.table.none")] : lines };
      });
    });

  table
    .command("import")
    .description(say("cli.table.import"))
    .argument("<file>")
    .requiredOption("--id <id>", say("cli.option.id"))
    .requiredOption("--title <text>", say("cli.option.title"))
    .action(async (file: string, options: { readonly id: string; readonly title: string }, command) => {
      await runOnBook(terminal, command, async ({ workbench }): Promise<Answer> => {
        const id = tableId.safeParse(options.id);
        if (!id.success) throw new UsageError(id.error.issues[0]?.message ?? "");
        const report = await takeTableCsv(workbench, { csv: await readText(file), tableId: id.data, title: options.title, keep: true });
        const told = [...report.problems, ...report.remarks].map((one) => say("cli.table.problem", { where: one.where, text: one.text }));
        const head =
          report.edit === null
            ? say("cli.table.refused", { count: report.problems.length })
            : say("cli.edit", { label: report.edit.label });
        return { data: report, lines: [head, ...told], withProblems: !report.accepted };
      });
    });

  table
    .command("export")
    .description(say("cli.table.export"))
    .argument("[table]")
    .action(async (text: string | undefined, _options: unknown, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        const found = await findTable(workbench, text);
        const csv = await tableCsv(workbench, found.id);
        return { data: { tableId: found.id, csv }, lines: [csv.trimEnd()] };
      });
    });

  table
    .command("remove")
    .description(say("cli.table.remove"))
    .argument("<table>")
    .action(async (text: string, _options: unknown, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        const edit = await removeTable(workbench, (await findTable(workbench, text)).id);
        return { data: { edit }, lines: [say("cli.edit", { label: edit.label })] };
      });
    });
};
