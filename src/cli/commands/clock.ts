import { applyClockShift, proposeClockShifts } from "../../app/index.js";
import { say } from "../../words/index.js";
import { runOnBook } from "../run-verb.js";
import type { AddVerb } from "../verbs.js";

export const addClock: AddVerb = (program, terminal) => {
  program
    .command("clock")
    .description(say("cli.clock"))
    .option("--apply", say("cli.option.apply"))
    .action(async (options: { readonly apply?: boolean }, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        const proposals = await proposeClockShifts(workbench.store);
        if (proposals.length === 0) return { data: { proposals }, lines: [say("cli.clock.none")] };
        const lines = proposals.map((one) =>
          say("cli.clock.proposal", {
            dates: one.dates.join(", "),
            sentence: one.sentence,
            before: one.onStopsBefore,
            after: one.onStopsAfter,
            count: one.photoCount,
            trust: one.trustworthy ? "yes" : "no",
          }),
        );
        if (options.apply !== true) return { data: { proposals }, lines };
        const applied = [];
        for (const one of proposals.filter((proposal) => proposal.trustworthy))
          applied.push({ shiftS: one.shiftS, ...(await applyClockShift(workbench.store, one)) });
        return {
          data: { proposals, applied },
          lines: applied.map((one) => say("cli.clock.applied", { seconds: one.shiftS, placed: one.placed, unsure: one.notSure })),
        };
      });
    });
};
