import { resolve } from "node:path";
import { beginEmptyBook, openDemo, restoreBook } from "../../app/index.js";
import { say } from "../../words/index.js";
import { folderOf, runPlain } from "../run-verb.js";
import type { AddVerb } from "../verbs.js";

export const addBegin: AddVerb = (program, terminal) => {
  program
    .command("begin")
    .description(say("cli.begin"))
    .argument("[folder]")
    .option("--title <text>", say("cli.option.title"), say("begin.default-title"))
    .option("--zone <zone>", say("cli.option.zone"), Intl.DateTimeFormat().resolvedOptions().timeZone)
    .option("--demo", say("cli.option.demo"))
    .action(
      async (given: string | undefined, options: { readonly title: string; readonly zone: string; readonly demo?: boolean }, command) => {
        await runPlain(terminal, command, async () => {
          const folder = resolve(given ?? folderOf(command, terminal));
          const { clock, programRoot } = terminal;
          const bench = await (options.demo === true
            ? openDemo(folder, { clock, programRoot })
            : beginEmptyBook(folder, { title: options.title, zone: options.zone }, { clock, programRoot }));
          await bench.close();
          return { data: { folder }, lines: [say("cli.book-begun", { folder })] };
        });
      },
    );

  program
    .command("restore")
    .description(say("cli.restore"))
    .option("--even-if-sound", say("cli.option.even-if-sound"))
    .action(async (options: { readonly evenIfSound?: true }, command) => {
      await runPlain(terminal, command, async () => {
        const restored = await restoreBook(folderOf(command, terminal), {
          clock: terminal.clock,
          evenIfSound: options.evenIfSound === true,
        });
        const values = { at: restored.takenAt, backup: restored.backup, aside: restored.damagedKeptIn };
        return { data: restored, lines: [say("cli.restored", values)] };
      });
    });
};
