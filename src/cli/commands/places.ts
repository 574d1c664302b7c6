import { listPlaces, mayCollect } from "../../app/index.js";
import { publicPlace } from "../../engine/index.js";
import { say } from "../../words/index.js";
import { findPlant, readDate, readWhole } from "../find.js";
import { runOnBook } from "../run-verb.js";
import type { AddVerb } from "../verbs.js";

export const addPlaces: AddVerb = (program, terminal) => {
  program
    .command("may-collect")
    .description(say("cli.may-collect"))
    .argument("<plant>")
    .option("--on <date>", say("cli.option.on"))
    .option("--stems <count>", say("cli.option.stems"))
    .option("--take <count>", say("cli.option.take"), "1")
    .action(async (text: string, options: { readonly on?: string; readonly stems?: string; readonly take: string }, command) => {
      await runOnBook(terminal, command, async ({ workbench, today }) => {
        const plant = await findPlant(workbench, text);
        const on = options.on === undefined ? ((await workbench.store.info()).readAt ?? today) : readDate(options.on);
        const stems = options.stems === undefined ? undefined : readWhole(options.stems, 1, 1_000_000);
        const answer = await mayCollect(workbench, plant.id, on, readWhole(options.take, 1, 10_000), { stems });
        const line = answer.allowed
          ? say("cli.collect.yes", { remarks: answer.remarks.join(" ") })
          : say("cli.collect.no", { reasons: answer.reasons.map((reason) => reason.text).join(" ") });
        return { data: { plantId: plant.id, on, ...answer }, lines: [line] };
      });
    });

  program
    .command("coarse")
    .description(say("cli.coarse"))
    .action(async (_options: unknown, command) => {
      await runOnBook(terminal, command, async ({ workbench }) => {
        const { spots } = await listPlaces(workbench);
        const places = spots.map((spot) => ({
          spotId: spot.id,
          name: spot.name,
          publishAs: spot.publishAs,
          because: spot.sensitiveBecause,
          place: publicPlace(spot, spot.publishAs),
        }));
        const lines = places.map((one) =>
          say("cli.coarse.row", {
            spot: one.name,
            precision:
              one.place.kind === "point"
                ? `${one.place.latText}, ${one.place.lonText} (${one.publishAs}, ± ${one.place.uncertaintyM ?? "?"} m)`
                : say(`cli.coarse.${one.place.kind}`),
            why: one.because === "" ? "" : `; ${one.because}`,
          }),
        );
        return { data: { places }, lines };
      });
    });
};
