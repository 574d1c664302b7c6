import { bringFolder } from "../../app/index.js";
import { say } from "../../words/index.js";
import { runOnBook } from "../run-verb.js";
import { UsageError } from "../terminal.js";
import type { AddVerb } from "../verbs.js";

export const addBring: AddVerb = (program, terminal) => {
  program
    .command("bring")
    .description(say("cli.bring"))
    .argument("<folder>")
    .action(async (folder: string, _options: unknown, command) => {
      await runOnBook(terminal, command, async ({ workbench, workers, now, dry }) => {
        // Bringing keeps the files themselves, which no rehearsal can take back.
        if (dry) throw new UsageError(say("usage.no-dry"));
        const report = await bringFolder(folder, { store: workbench.store, workers: workers(), now });
        const told = report.files.filter((file) => file.outcome !== "new");
        return {
          data: report,
          lines: [
            ...told.map((file) =>
              say("cli.bring.one", {
                outcome: file.outcome === "already-here" ? "alreadyHere" : file.outcome,
                file: file.fileName,
                text: file.text === "" ? "" : `: ${file.text}`,
              }),
            ),
            say("cli.bring.sum", { fresh: report.fresh, here: report.here, refused: report.refused, folder }),
          ],
          withProblems: report.refused > 0,
        };
      });
    });
};
