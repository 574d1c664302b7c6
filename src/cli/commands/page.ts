import { publishPage } from "../../app/index.js";
import { say } from "../../words/index.js";
import { findTable, findTaxon, readChoice } from "../find.js";
import { runOnBook } from "../run-verb.js";
import { UsageError } from "../terminal.js";
import type { AddVerb } from "../verbs.js";

interface PageOptions {
  readonly table?: string;
  readonly pdf: boolean;
  readonly paper: string;
}

export const addPage: AddVerb = (program, terminal) => {
  program
    .command("page")
    .description(say("cli.page"))
    .argument("<taxon>")
    .option("--table <id>", say("cli.option.table"))
    .option("--no-pdf", say("cli.option.no-pdf"))
    .option("--paper <size>", "A4, Letter", "A4")
    .action(async (text: string, options: PageOptions, command) => {
      await runOnBook(terminal, command, async ({ workbench, workers, dry }) => {
        if (dry) throw new UsageError(say("usage.no-dry"));
        const table = await findTable(workbench, options.table);
        const taxon = findTaxon(table, text);
        const pool = workers();
        const effects: Parameters<typeof publishPage>[2] = { publicImage: (path, imageOptions) => pool.publicImage(path, imageOptions) };
        const made = await publishPage(workbench, { tableId: table.id, taxonId: taxon.id }, effects, {
          pdf: options.pdf,
          paper: readChoice(options.paper, ["A4", "Letter"]),
        });
        const lines = [say("cli.published", { files: made.files, folder: made.folder, pdf: made.pdf.text }), ...made.heldBack];
        return { data: made, lines };
      });
    });
};
