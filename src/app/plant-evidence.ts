/** Gathers what a book holds of plants: read once, asked for each plant. */
import {
  caseByRule,
  type CaseByRule,
  type FollowedPlant,
  type Happening,
  type IsoDate,
  type Look,
  type Outing,
  type Photo,
  type Reading,
  type ReferenceTable,
  type SettledRule,
  type Slip,
  type Spot,
  type Stage,
  type StageRecord,
  type TableId,
  type View,
  type Voucher,
} from "../engine/index.js";
import type { BookStore } from "../store/index.js";
import { say } from "../words/index.js";
import { NotInBook } from "./app-error.js";

/** One plant with all that belongs to it. */
export interface PlantFile {
  readonly plant: FollowedPlant;
  readonly table: ReferenceTable;
  readonly spot: Spot | null;
  readonly looks: readonly Look[];
  readonly readings: readonly Reading[];
  readonly photos: readonly Photo[];
  readonly stageRecords: readonly StageRecord[];
  readonly happenings: readonly Happening[];
  readonly slips: readonly Slip[];
  readonly vouchers: readonly Voucher[];
  /** Outings on which it was visited or anything was recorded of it, by date. */
  readonly outings: readonly Outing[];
}

export interface BookFile {
  readonly plants: readonly PlantFile[];
  readonly outings: readonly Outing[];
  readonly stages: readonly Stage[];
  readonly views: readonly View[];
  readonly rule: SettledRule;
  readonly notice: string;
}

const byDate = <T extends { readonly date: string }>(records: readonly T[]): readonly T[] =>
  records.toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));

/** Groups records by their plant. */
const byPlant = <T extends { readonly plantId: string | null }>(records: readonly T[]): ReadonlyMap<string, readonly T[]> => {
  const groups = new Map<string, T[]>();
  for (const record of records) {
    if (record.plantId === null) continue;
    const group = groups.get(record.plantId);
    if (group === undefined) groups.set(record.plantId, [record]);
    else group.push(record);
  }
  return groups;
};

/** Everything of every plant whose table is in the book; a plant without its table is left out and said by `proof`. */
export const readBookFile = async (store: BookStore): Promise<BookFile> => {
  const [info, plants, spots, looks, readings, photos, stageRecords, happenings, slips, vouchers, outings, stops, stages, views] =
    await Promise.all([
      store.info(),
      store.list("plant"),
      store.list("spot"),
      store.list("look"),
      store.list("reading"),
      store.list("photo"),
      store.list("stageRecord"),
      store.list("happening"),
      store.list("slip"),
      store.list("voucher"),
      store.list("outing"),
      store.list("stop"),
      store.list("stage"),
      store.list("view"),
    ]);
  const tables = new Map<TableId, ReferenceTable>();
  for (const id of new Set(plants.map((plant) => plant.tableId))) {
    const table = await store.table(id);
    if (table !== undefined) tables.set(id, table);
  }
  const groups = {
    looks: byPlant(looks),
    readings: byPlant(readings),
    photos: byPlant(photos),
    stageRecords: byPlant(stageRecords),
    happenings: byPlant(happenings),
    slips: byPlant(slips),
    vouchers: byPlant(vouchers),
    stops: byPlant(stops),
  };
  const ordered = byDate(outings);
  const of = <T>(group: ReadonlyMap<string, readonly T[]>, plant: FollowedPlant): readonly T[] => group.get(plant.id) ?? [];
  return {
    outings: ordered,
    stages,
    views,
    rule: info.settledRule,
    notice: info.notice,
    plants: plants.flatMap((plant) => {
      const table = tables.get(plant.tableId);
      if (table === undefined) return [];
      const file = {
        plant,
        table,
        spot: spots.find((spot) => spot.id === plant.spotId) ?? null,
        looks: byDate(of(groups.looks, plant)),
        readings: byDate(of(groups.readings, plant)),
        photos: of(groups.photos, plant),
        stageRecords: byDate(of(groups.stageRecords, plant)),
        happenings: byDate(of(groups.happenings, plant)),
        slips: of(groups.slips, plant).toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0)),
        vouchers: byDate(of(groups.vouchers, plant)),
      };
      const visited = new Set<string>([
        ...of(groups.stops, plant).map((stop) => stop.outingId),
        ...[...file.looks, ...file.readings, ...file.stageRecords].map((record) => record.outingId),
      ]);
      return [{ ...file, outings: ordered.filter((outing) => visited.has(outing.id)) }];
    }),
  };
};

/** One plant of the book. @throws {NotInBook} */
export const readPlantFile = async (store: BookStore, plantId: string): Promise<{ readonly book: BookFile; readonly file: PlantFile }> => {
  const book = await readBookFile(store);
  const file = book.plants.find(({ plant }) => plant.id === plantId);
  if (file === undefined) throw new NotInBook("plant", plantId, say("refused.not-in-book", { kind: say("kind.plant"), id: plantId }));
  return { book, file };
};

/** The stages of a plant's year: its table's, else the book's. */
export const stagesOf = (book: BookFile, file: PlantFile): readonly Stage[] =>
  file.table.stages.length > 0 ? file.table.stages : book.stages;

/** The case of a plant by the visible rule. */
export const ruleCaseOf = (book: BookFile, file: PlantFile, upTo: IsoDate | null): CaseByRule =>
  caseByRule({ table: file.table, evidence: file, rivalIds: file.plant.rivalIds, happenings: file.happenings, rule: book.rule, upTo });
