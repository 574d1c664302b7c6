/** A plant's page: how it stands, its board, conflicts, and the records behind them. */
import { conflictsOf, missingViews, statesSaid, type Conflict, type IsoDate, type Look } from "../engine/index.js";
import type { PlantPage } from "../contract/index.js";
import { listText, say } from "../words/index.js";
import { boardView } from "./board-view.js";
import { shortDay, standingOf, tableWords, type TableWords } from "./case-words.js";
import { readPlantFile, ruleCaseOf, stagesOf } from "./plant-evidence.js";
import { ruleChecks } from "./rule-checks.js";
import { readingDay, type Workbench } from "./workbench.js";

const conflictSentence = (words: TableWords, conflict: Conflict): string => {
  const character = words.character(conflict.characterId);
  const lookText = (look: Look): string =>
    say("conflict.look", {
      states: character === undefined ? "" : words.stateNames(character.id, statesSaid(character, look), "and"),
      by: look.by,
      lens: look.lens === null ? say("detail.eye") : look.lens.replace("x", "×"),
      date: shortDay(look.date),
    });
  return say("conflict.sentence", {
    character: words.characterName(conflict.characterId),
    looks: listText(conflict.looks.map(lookText), "and"),
  });
};

/** @throws {NotInBook} */
export const plantPage = async (workbench: Workbench, plantId: string, upTo: IsoDate | undefined): Promise<PlantPage> => {
  const day = await readingDay(workbench, upTo);
  const { book, file } = await readPlantFile(workbench.store, plantId);
  const permissions = await workbench.store.list("permission");
  const words = tableWords(file.table);
  const rule = ruleCaseOf(book, file, day);
  const until = <T extends { readonly date: string }>(records: readonly T[]): T[] => records.filter((record) => record.date <= day);
  const looks = until(file.looks);
  const stages = stagesOf(book, file);
  const stageRecords = until(file.stageRecords);
  const spot = file.spot;
  if (spot === null) throw new TypeError(`plant ${plantId} refers to a spot that is not in the book`);
  return {
    plant: file.plant,
    spot,
    permissions: permissions
      .filter((permission) => permission.spotIds.length === 0 || permission.spotIds.includes(spot.id))
      .map((permission) => ({ ...permission, expired: permission.to < day })),
    cautions: [...new Set(file.table.taxa.filter((taxon) => rule.outcome.left.includes(taxon.id)).flatMap((taxon) => taxon.cautions))],
    standing: standingOf(file.table, rule, ruleChecks(file, rule, day)),
    board: boardView(book, file, words, day),
    conflicts: conflictsOf(file.table.characters, looks).map((conflict) => ({
      characterId: conflict.characterId,
      sentence: conflictSentence(words, conflict),
      lookIds: conflict.looks.map((look) => look.id),
    })),
    looks: [...looks],
    readings: until(file.readings),
    stageRecords,
    outings: file.outings.filter((outing) => outing.date <= day),
    happenings: until(file.happenings),
    slips: file.slips.filter((slip) => slip.on <= day),
    vouchers: until(file.vouchers),
    photoIds: file.photos.toSorted((a, b) => ((a.takenCamera ?? "") < (b.takenCamera ?? "") ? -1 : 1)).map((photo) => photo.id),
    missingViews: missingViews({ views: book.views, records: stageRecords, photos: file.photos }).flatMap((at) =>
      at.missing.map((viewId) => ({
        viewId,
        name: book.views.find((view) => view.id === viewId)?.name ?? viewId,
        stageId: at.stageId,
        stageName: stages.find((stage) => stage.id === at.stageId)?.name ?? at.stageId,
      })),
    ),
  };
};
