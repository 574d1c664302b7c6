import { say } from "../../words/index.js";
import { readWhole } from "../find.js";
import { runOnBook } from "../run-verb.js";
import type { AddVerb } from "../verbs.js";

export const addUpkeep: AddVerb = (program, terminal) => {
  program
    .command("proof")
    .description(say("cli.proof"))
    .action(async (_options: unknown, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        const report = await workbench.store.proof();
        const values = { originals: report.originalsChecked, records: report.recordsChecked, count: report.findings.length };
        const lines = [
          say(report.findings.length === 0 ? "cli.proof.clean" : "cli.proof.found", values),
          ...report.findings.map((finding) => `  ${finding.text}${finding.path === undefined ? "" : ` (${finding.path})`}`),
        ];
        return { data: report, lines, withProblems: !report.clean };
      });
    });

  program
    .command("undo")
    .description(say("cli.undo"))
    .action(async (_options: unknown, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        const edit = await workbench.store.undo();
        return { data: { edit }, lines: [edit === null ? say("cli.undo.none") : say("cli.undone", { label: edit.label })] };
      });
    });

  program
    .command("redo")
    .description(say("cli.redo"))
    .action(async (_options: unknown, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        const edit = await workbench.store.redo();
        return { data: { edit }, lines: [edit === null ? say("cli.redo.none") : say("cli.redone", { label: edit.label })] };
      });
    });

  program
    .command("history")
    .description(say("cli.history"))
    .option("--limit <count>", say("cli.option.limit"), "50")
    .action(async (options: { readonly limit: string }, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        const edits = await workbench.store.history(readWhole(options.limit, 1, 500));
        return {
          data: { edits },
          lines: edits.map((edit) => say("cli.history.row", { at: edit.at, label: edit.label, state: edit.state })),
        };
      });
    });
};
