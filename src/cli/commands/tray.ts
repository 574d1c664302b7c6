import { listSheets, plantPage } from "../../app/index.js";
import { say } from "../../words/index.js";
import { findPlant } from "../find.js";
import { runOnBook } from "../run-verb.js";
import type { AddVerb } from "../verbs.js";

export const addTray: AddVerb = (program, terminal) => {
  program
    .command("tray")
    .description(say("cli.tray"))
    .action(async (_options: unknown, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        const sheets = (await listSheets(workbench)).filter((sheet) => sheet.plantId === null && !sheet.leftOut);
        const rows = sheets.map((sheet) => say("cli.tray.row", { taken: sheet.taken ?? "—", file: sheet.fileName }));
        const lines = sheets.length === 0 ? [say("cli.tray.none")] : [...rows, say("cli.tray.sum", { count: sheets.length })];
        return { data: { sheets }, lines };
      });
    });

  program
    .command("missing")
    .description(say("cli.missing"))
    .argument("[plant]")
    .action(async (text: string | undefined, _options: unknown, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        const plants = text === undefined ? await workbench.store.list("plant") : [await findPlant(workbench, text)];
        const found = [];
        const lines: string[] = [];
        for (const plant of plants) {
          const { missingViews } = await plantPage(workbench, plant.id, undefined);
          found.push({ plantId: plant.id, nick: plant.nick, missingViews });
          if (missingViews.length === 0) lines.push(say("cli.missing.none", { nick: plant.nick }));
          for (const stage of new Set(missingViews.map((view) => view.stageName))) {
            const views = missingViews.filter((view) => view.stageName === stage).map((view) => view.name);
            lines.push(say("cli.missing.row", { nick: plant.nick, stage, views: views.join(", ") }));
          }
        }
        return { data: { plants: found }, lines };
      });
    });
};
