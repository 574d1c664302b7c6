import { platform } from "node:os";
import { resolve } from "node:path";
import { bookFolderOf, demoFolder } from "../../app/index.js";
import { serveBook } from "../../server/index.js";
import { say } from "../../words/index.js";
import { readWhole } from "../find.js";
import { folderOf, runPlain } from "../run-verb.js";
import type { Terminal } from "../terminal.js";
import type { AddVerb } from "../verbs.js";

/** A browser is opened only where there is a desktop to open it on. */
const hasDesktop = ({ env }: Terminal): boolean =>
  platform() !== "linux" || (env["DISPLAY"] ?? "") !== "" || (env["WAYLAND_DISPLAY"] ?? "") !== "";

/** Opens the browser; where that fails the address has been printed all the same. */
const openBrowser = async (url: string): Promise<void> => {
  try {
    const { default: open } = await import("open");
    const child = await open(url);
    child.once("error", () => undefined);
    child.unref();
  } catch {
    // No browser, or none that lets itself be opened: nothing is lost.
  }
};

/** Waits until somebody asks the program to end. A second signal ends it at once. */
const untilStopped = (): Promise<void> =>
  new Promise((resolve) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => resolve());
  });

export const addServe: AddVerb = (program, terminal) => {
  program
    .command("serve")
    .description(say("cli.serve"))
    .option("--port <number>", say("cli.option.port"))
    .option("--no-open", say("cli.option.no-open"))
    .action(async (options: { readonly port?: string; readonly open: boolean }, command) => {
      await runPlain(terminal, command, async () => {
        const folder = resolve(folderOf(command, terminal));
        const isDemo = folder === resolve(demoFolder(terminal)) || folder === resolve(bookFolderOf({ ...terminal, env: {} }));
        const running = await serveBook({
          folder,
          isDemo,
          ...(options.port === undefined ? {} : { port: readWhole(options.port, 1, 65_535) }),
          programRoot: terminal.programRoot,
          clock: terminal.clock,
          tell: terminal.err,
        });
        terminal.out(say("serve.at", { url: running.url }));
        terminal.out(say("serve.book", { folder }));
        terminal.out(say("serve.stop"));
        if (options.open && hasDesktop(terminal)) await openBrowser(running.url);
        await untilStopped();
        terminal.err(say("serve.stopping"));
        await running.stop();
        return { data: { stopped: true }, lines: [] };
      });
    });
};
