/**
 * Writes a determination slip. A plain species name against the case (no taxon left, or not this one) needs a question mark
 * to it or a reason of the writer's own: a sentence, not a word.
 */
import type { FollowedPlant, IsoDate, ReferenceTable, Slip, TaxonId } from "../engine/index.js";
import { evidenceUpTo, findingsOf, scoreLookup, weighTaxa } from "../engine/index.js";
import type { EditSummary } from "../store/index.js";
import { say } from "../words/index.js";
import { Refused } from "./app-error.js";
import type { Workbench } from "./workbench.js";
import { writeRecord } from "./write-record.js";

/** The taxa that the visible rule leaves for a plant on a day; all of the table when nothing was seen. */
export const taxaLeft = async (
  workbench: Workbench,
  plant: FollowedPlant,
  table: ReferenceTable,
  upTo: IsoDate,
): Promise<readonly TaxonId[]> => {
  const { store } = workbench;
  const ofPlant = <T extends { readonly plantId: string }>(records: readonly T[]): readonly T[] =>
    records.filter((record) => record.plantId === plant.id);
  const evidence = { looks: ofPlant(await store.list("look")), readings: ofPlant(await store.list("reading")) };
  const findings = findingsOf(table.characters, evidenceUpTo(evidence, upTo));
  const rule = (await store.info()).settledRule;
  return weighTaxa(table, scoreLookup(table), findings, rule)
    .filter((taxon) => taxon.left)
    .map((taxon) => taxon.taxonId);
};

/** Fewest words of a reason that counts as one's own. Our choice. */
const leastWords = 4;

/** @throws {Refused} `slip-against-case`; what `writeRecord` throws. */
export const keepSlip = async (workbench: Workbench, id: string, slip: Slip): Promise<EditSummary> => {
  const { store } = workbench;
  const plant = await store.get("plant", slip.plantId);
  const table = plant === undefined ? undefined : await store.table(plant.tableId);
  const isNew = (await store.get("slip", id)) === undefined;
  if (plant !== undefined && table !== undefined && isNew && slip.qualifier === "" && slip.role !== "vid") {
    const left = await taxaLeft(workbench, plant, table, slip.on);
    const named = slip.taxonIds.filter((taxonId) => table.taxa.some((taxon) => taxon.id === taxonId));
    const against = left.length === 0 || named.some((taxonId) => !left.includes(taxonId));
    const own = slip.why.trim().split(/\s+/).length >= leastWords;
    if (against && !own) {
      const detail = say("refused.slip-own-reason", { nick: plant.nick });
      throw new Refused({ code: "slip-against-case", detail, kept: say("refused.kept"), remedy: say("refused.slip-remedy") }, [
        { pointer: "/why", value: slip.why.slice(0, 80), detail },
        { pointer: "/qualifier", value: slip.qualifier, detail },
      ]);
    }
  }
  return writeRecord(workbench, "slip", id, slip);
};
