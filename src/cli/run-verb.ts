/** Opens the book for a verb, runs it, says what came of it, closes the book, sets the exit code. The same for all verbs. */
import type { Command } from "commander";
import { bookFolderOf, dryRun, isTaggedError, openWorkbench, Unanswered, Refused } from "../app/index.js";
import { say } from "../words/index.js";
import type { Answer, GlobalOptions, OpenDesk, Terminal } from "./terminal.js";
import { exitCodes, UsageError } from "./terminal.js";

const globals = (command: Command): GlobalOptions => command.optsWithGlobals<GlobalOptions>();

/** The folder meant: --book, else STIPULE_BOOK, else the demo's. */
export const folderOf = (command: Command, terminal: Terminal): string =>
  globals(command).book ?? bookFolderOf({ env: terminal.env, home: terminal.home });

const showAnswer = (terminal: Terminal, answer: Answer, json: boolean): void => {
  if (json) terminal.out(JSON.stringify(answer.data, undefined, 2));
  else for (const line of answer.lines) terminal.out(line);
  terminal.setExitCode(answer.withProblems === true ? exitCodes.problems : exitCodes.done);
};

/** A failure as data for --json. */
const failureData = (error: Error & { readonly code?: unknown }) => ({
  error: {
    code: typeof error.code === "string" ? error.code : "unforeseen",
    message: error.message,
    ...(error instanceof Refused && { errors: error.errors, remedy: error.remedy }),
    ...(error instanceof Unanswered && { questions: error.questions, remedy: error.remedy }),
  },
});

const showFailure = (terminal: Terminal, error: unknown, json: boolean): void => {
  if (!(error instanceof Error)) throw error;
  terminal.setExitCode(error instanceof UsageError ? exitCodes.usage : exitCodes.failed);
  if (json) {
    terminal.out(JSON.stringify(failureData(error), undefined, 2));
    return;
  }
  if (error instanceof UsageError || isTaggedError(error)) {
    terminal.err(error.message);
    if (error instanceof Refused) for (const fault of error.errors) terminal.err(`  ${fault.pointer}: ${fault.detail}`);
    if (error instanceof Unanswered) for (const question of error.questions) terminal.err(`  ${question.text}`);
    if ((error instanceof Refused || error instanceof Unanswered) && error.remedy !== undefined) terminal.err(error.remedy);
    return;
  }
  // Nobody foresaw it: whoever repairs it needs the whole of it.
  terminal.err(error.stack ?? error.message);
};

/** Runs a verb that needs no open book. */
export const runPlain = async (terminal: Terminal, command: Command, verb: () => Promise<Answer>): Promise<void> => {
  const json = globals(command).json === true;
  try {
    showAnswer(terminal, await verb(), json);
  } catch (error) {
    showFailure(terminal, error, json);
  }
};

/** Runs a verb on the open book. With --dry its edits are looked at and thrown away. */
export const runOnBook = (terminal: Terminal, command: Command, verb: (desk: OpenDesk) => Promise<Answer>): Promise<void> =>
  runPlain(terminal, command, async () => {
    const folder = folderOf(command, terminal);
    const dry = globals(command).dry === true;
    const open = await openWorkbench(folder, { clock: terminal.clock });
    try {
      const rehearsal = dry ? dryRun(open.workbench) : undefined;
      const workbench = rehearsal?.workbench ?? open.workbench;
      const answer = await verb({ workbench, workers: open.workers, now: open.now, folder, today: workbench.today(), dry });
      if (rehearsal === undefined) return answer;
      const edits = rehearsal.edits();
      const lines = edits.map((edit) => say("cli.dry", { label: edit.label, count: edit.rowCount }));
      return { ...answer, data: { dry: true, edits, answer: answer.data }, lines: lines.length === 0 ? answer.lines : lines };
    } finally {
      await open.close();
    }
  });
