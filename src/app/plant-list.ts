/** The followed plants and how each stands on a day. */
import { partOfPhoto, type IsoDate, type Photo, type View } from "../engine/index.js";
import type { PlantCard } from "../contract/index.js";
import { standingOf } from "./case-words.js";
import { readBookFile, ruleCaseOf } from "./plant-evidence.js";
import { ruleChecks } from "./rule-checks.js";
import { readingDay, type Workbench } from "./workbench.js";

/** The view that shows the plant best: the whole stem in flower, else any whole stem, else any photograph. */
const cover = (photos: readonly Photo[], views: readonly View[]): Photo | undefined => {
  const kept = photos.filter((photo) => photo.leaveOut === null);
  const whole = kept.filter((photo) => partOfPhoto(photo, views) === "whole plant");
  return whole[Math.floor(whole.length / 2)] ?? kept[0];
};

export const plantList = async (workbench: Workbench, upTo: IsoDate | undefined): Promise<{ plants: PlantCard[] }> => {
  const day = await readingDay(workbench, upTo);
  const book = await readBookFile(workbench.store);
  const plants = book.plants.map((file): PlantCard => {
    const rule = ruleCaseOf(book, file, day);
    const outings = file.outings.filter((outing) => outing.date <= day);
    return {
      plant: file.plant,
      spotName: file.spot?.name ?? "",
      standing: standingOf(file.table, rule, ruleChecks(file, rule, day)),
      photoCount: file.photos.length,
      lookCount: file.looks.filter((look) => look.date <= day).length + file.readings.filter((reading) => reading.date <= day).length,
      outingCount: outings.length,
      coverPhotoId: cover(file.photos, book.views)?.id ?? null,
      lastDate: outings.at(-1)?.date ?? null,
    };
  });
  return { plants };
};
