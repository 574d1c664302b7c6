/**
 * What may be seen by anyone, taken out of a book: the input of a species account. Places are coarsened here, and what a
 * sensitive place would give away (its name, nicknames, notes, exact days, pictures of the setting) stays behind; the
 * publishing layer never sees it.
 */
import {
  dateOf,
  partOfPhoto,
  publicPlace,
  shiftTime,
  type Account,
  type CaseByRule,
  type IsoDate,
  type Outing,
  type Photo,
  type PhotoId,
  type PublicPlaceClass,
  type ReferenceTable,
  type Spot,
  type SpotId,
  type TableId,
  type Taxon,
  type TaxonId,
  type View,
} from "../engine/index.js";
import type { AccountCase, AccountInput, AccountPhoto, AccountPlant, PublicDate, PublicSpot } from "../publish/index.js";
import { say } from "../words/index.js";
import { NotInBook, notInBook } from "./app-error.js";
import { readBookFile, ruleCaseOf, stagesOf, type BookFile, type PlantFile } from "./plant-evidence.js";
import { readingDay, type Workbench } from "./workbench.js";

/** Most photographs of one page: enough for every view of a year, few enough to be printed. */
const mostPhotos = 30;

/** A photograph chosen for the page; its public files are made by whoever publishes. */
export type ChosenPhoto = Omit<AccountPhoto, "files">;

/** Everything of an account but the files of its photographs. */
export interface AccountSource {
  readonly input: Omit<AccountInput, "photos">;
  readonly taxon: Taxon;
  readonly table: ReferenceTable;
  readonly photos: readonly ChosenPhoto[];
  readonly originals: ReadonlyMap<PhotoId, Photo>;
  /** What is held back or coarsened, in words. */
  readonly heldBack: readonly string[];
  /** The true places behind it, for the last check before anything is written. */
  readonly secrets: readonly Secret[];
}

export interface Secret {
  readonly label: string;
  readonly lat: number | null;
  readonly lon: number | null;
  readonly publishAs: PublicPlaceClass;
  /** Words that must not appear: the name of a sensitive spot; null when the name is public. */
  readonly name: string | null;
}

/** A spot is sensitive when its keeper says why, or when its place is not to be known to a kilometre. */
const isSensitive = (spot: Spot): boolean => spot.sensitiveBecause !== "" || !["as-measured", "0.001-degree"].includes(spot.publishAs);

/** How a spot is published. A sensitive one never as measured, whatever an older record says. */
const publishedAs = (spot: Spot): PublicPlaceClass =>
  isSensitive(spot) && spot.publishAs === "as-measured" ? "0.001-degree" : spot.publishAs;

const publicSpot = (spot: Spot | null, spotId: SpotId): PublicSpot => {
  if (spot === null) return { id: spotId, name: "", setting: "", place: { kind: "unknown" }, sensitive: false };
  const sensitive = isSensitive(spot);
  return { id: spot.id, name: sensitive ? "" : spot.name, setting: spot.setting, place: publicPlace(spot, publishedAs(spot)), sensitive };
};

const accountCase = (found: CaseByRule, taxonId: TaxonId): AccountCase => ({
  word: found.word,
  taxonIds: found.taxonIds,
  settled: found.outcome.settled,
  findings: found.findings,
  rivals: found.weighed
    .filter((taxon) => taxon.taxonId !== taxonId && (taxon.left || found.rivals.includes(taxon.taxonId)))
    .toSorted((a, b) => Number(b.left) - Number(a.left) || a.against.length - b.against.length || a.againstSum - b.againstSum),
});

const publicPlant = (file: PlantFile, spot: PublicSpot, found: CaseByRule, taxonId: TaxonId, upTo: IsoDate): AccountPlant => {
  const { sensitive } = spot;
  const when = (date: IsoDate): PublicDate => (sensitive ? date.slice(0, 7) : date);
  const text = (words: string): string => (sensitive ? "" : words);
  const known = <T extends { readonly date: IsoDate }>(records: readonly T[]): readonly T[] =>
    records.filter((record) => record.date <= upTo);
  return {
    id: file.plant.id,
    nick: text(file.plant.nick),
    marks: text(file.plant.marks),
    stemCount: file.plant.stemCount,
    spot,
    caseFile: accountCase(found, taxonId),
    visits: [...new Set(known(file.outings).map((outing) => when(outing.date)))],
    looks: known(file.looks).map(({ outingId: _outing, plantId: _plant, ...look }) => ({
      ...look,
      date: when(look.date),
      note: text(look.note),
    })),
    readings: known(file.readings).map(({ outingId: _outing, plantId: _plant, ...reading }) => ({
      ...reading,
      date: when(reading.date),
      note: text(reading.note),
    })),
    stageRecords: known(file.stageRecords).map(({ outingId: _outing, plantId: _plant, ...record }) => ({
      ...record,
      date: when(record.date),
      why: text(record.why),
    })),
    slips: file.slips.filter((slip) => slip.on <= upTo).map(({ plantId: _plant, ...slip }) => ({ ...slip, on: when(slip.on) })),
    vouchers: known(file.vouchers)
      .filter((voucher) => voucher.refusedBecause === null)
      .map(({ plantId: _plant, ...voucher }) => ({ ...voucher, date: when(voucher.date) })),
  };
};

/** The plants an account rests on: those its keeper chose; else those the taxon alone is left for; else those it may still be. */
const plantsFor = (
  files: readonly PlantFile[],
  cases: ReadonlyMap<string, CaseByRule>,
  taxonId: TaxonId,
  account: Account | null,
): readonly PlantFile[] => {
  if (account !== null && account.plantIds.length > 0) return files.filter((file) => account.plantIds.includes(file.plant.id));
  const about = (word: (found: CaseByRule) => boolean): readonly PlantFile[] =>
    files.filter((file) => {
      const found = cases.get(file.plant.id);
      return found !== undefined && word(found) && found.taxonIds.includes(taxonId);
    });
  const alone = about((found) => found.word === "species" || found.word === "cf");
  return alone.length > 0 ? alone : about((found) => found.word === "one-of-two");
};

const choosePhotos = (
  book: BookFile,
  files: readonly PlantFile[],
  spots: ReadonlyMap<string, PublicSpot>,
  upTo: IsoDate,
): { readonly photos: readonly ChosenPhoto[]; readonly originals: ReadonlyMap<PhotoId, Photo>; readonly heldBack: readonly string[] } => {
  const outingOf = new Map<string, Outing>(book.outings.map((outing) => [outing.id, outing]));
  const viewOf = new Map<string, View>(book.views.map((view) => [view.id, view]));
  const stages = files.flatMap((file) => stagesOf(book, file));
  const stageOrder = new Map<string, number>(stages.map((stage, i) => [stage.id, i]));
  const viewOrder = new Map<string, number>(book.views.map((view, i) => [view.id, i]));
  const heldBack: string[] = [];
  const rows = files.flatMap((file) => {
    const sensitive = spots.get(file.plant.id)?.sensitive ?? false;
    // What nobody has said anything of may show the place as well.
    const mayShowPlace = (photo: Photo): boolean =>
      photo.part === "place" || viewOf.get(photo.viewId ?? "")?.part === "place" || partOfPhoto(photo, book.views) === "";
    const held = new Set(sensitive ? file.photos.filter(mayShowPlace) : []);
    if (held.size > 0) heldBack.push(say("heldBack.placePhotos", { plant: file.plant.nick, count: held.size }));
    return file.photos
      .filter((photo) => !held.has(photo))
      .map((photo) => {
        const outing = outingOf.get(photo.outingId ?? "");
        const taken = photo.takenCamera === null ? null : dateOf(shiftTime(photo.takenCamera, outing?.cameraShiftS ?? 0));
        const date = outing?.date ?? taken;
        const record = file.stageRecords.find((r) => r.outingId === photo.outingId && r.answer === "yes");
        return { photo, date, stageId: photo.stageId ?? record?.stageId ?? null, sensitive };
      })
      .filter(({ date }) => date === null || date <= upTo);
  });
  const leftOut = rows.filter(({ photo }) => photo.leaveOut !== null).length;
  if (leftOut > 0) heldBack.push(say("heldBack.leftOut", { count: leftOut }));
  const order = (row: (typeof rows)[number]): number =>
    (row.stageId === null ? 99 : (stageOrder.get(row.stageId) ?? 98)) * 1000 +
    (row.photo.viewId === null ? 999 : (viewOrder.get(row.photo.viewId) ?? 998));
  const cited = new Set<string>(files.flatMap((file) => [...file.looks, ...file.readings].flatMap((evidence) => evidence.photoIds)));
  const usable = rows
    .filter(({ photo }) => photo.leaveOut === null)
    .toSorted((a, b) => order(a) - order(b) || (a.date ?? "").localeCompare(b.date ?? "", "en") || (a.photo.id < b.photo.id ? -1 : 1));
  // A photograph that stands behind a look or reading goes first; then one of each view and stage.
  const shown = new Set<string>();
  const chosen = usable
    .toSorted((a, b) => Number(cited.has(b.photo.id)) - Number(cited.has(a.photo.id)))
    .filter(({ photo, stageId }) => {
      const key = `${photo.viewId ?? photo.id}|${stageId ?? ""}`;
      if (shown.has(key) && !cited.has(photo.id)) return false;
      shown.add(key);
      return true;
    })
    .map((row, _, all) => {
      const ofView = all.filter((other) => other.photo.viewId === row.photo.viewId);
      // From the middle of its season outwards: a whole stem in flower comes before one in bud.
      return { row, turn: Math.abs(ofView.indexOf(row) - (ofView.length - 1) / 2) };
    })
    // By turns: first one of every view, then the second of each, so that no season or part falls off the end.
    .toSorted((a, b) => Number(cited.has(b.row.photo.id)) - Number(cited.has(a.row.photo.id)) || a.turn - b.turn)
    .slice(0, mostPhotos)
    .map(({ row }) => row)
    .toSorted((a, b) => order(a) - order(b));
  if (usable.length > chosen.length) heldBack.push(say("heldBack.moreOfView", { count: usable.length - chosen.length }));
  if (chosen.length > 0) heldBack.push(say("heldBack.metadata"));
  return {
    heldBack,
    originals: new Map(chosen.map(({ photo }) => [photo.id, photo])),
    photos: chosen.map(({ photo, date, stageId, sensitive }): ChosenPhoto => {
      const view = viewOf.get(photo.viewId ?? "");
      return {
        id: photo.id,
        plantId: photo.plantId,
        date: date === null ? null : sensitive ? date.slice(0, 7) : date,
        viewName: view?.name ?? "",
        part: partOfPhoto(photo, book.views),
        stageId,
        stageName: stages.find((stage) => stage.id === stageId)?.name ?? "",
        hasScale: view?.scaleWanted ?? false,
        caption: photo.caption,
        altText: photo.altText,
        credit: photo.credit,
        licence: photo.licence,
      };
    }),
  };
};

const heldBackOfPlant = (file: PlantFile, spot: PublicSpot): readonly string[] => {
  const plant = file.plant.nick;
  const { place } = spot;
  return [
    ...(place.kind === "withheld" ? [say("heldBack.placeWithheld", { plant })] : []),
    ...(place.kind === "point" && place.gridDegrees !== null ? [say("heldBack.place", { plant, grid: String(place.gridDegrees) })] : []),
    ...(spot.sensitive ? [say("heldBack.sensitive", { plant })] : []),
  ];
};

/**
 * The account of a taxon as it may be published. `upTo` counts evidence up to that day only; missing: the book's reading day.
 * @throws {NotInBook} when the table or the taxon is not in the book.
 */
export const accountSource = async (
  workbench: Workbench,
  { tableId, taxonId, upTo }: { readonly tableId: TableId; readonly taxonId: TaxonId; readonly upTo?: IsoDate },
): Promise<AccountSource> => {
  const { store } = workbench;
  const [book, info, people, accounts, spots, table] = await Promise.all([
    readBookFile(store),
    store.info(),
    store.list("person"),
    store.list("account"),
    store.list("spot"),
    store.table(tableId),
  ]);
  const day = await readingDay(workbench, upTo);
  const taxon = table?.taxa.find((t) => t.id === taxonId);
  if (table === undefined) throw notInBook("table", tableId);
  if (taxon === undefined) throw new NotInBook("taxon", taxonId, say("publish.noTaxon", { id: taxonId, table: table.title }));
  const account = accounts.find((a) => a.taxonId === taxonId && a.tableId === tableId) ?? null;
  const ofTable = book.plants.filter((file) => file.table.id === tableId);
  const cases = new Map<string, CaseByRule>(ofTable.map((file) => [file.plant.id, ruleCaseOf(book, file, day)]));
  const files = plantsFor(ofTable, cases, taxonId, account);
  const publicSpots = new Map<string, PublicSpot>(files.map((file) => [file.plant.id, publicSpot(file.spot, file.plant.spotId)]));
  const plants = files.flatMap((file) => {
    const [spot, found] = [publicSpots.get(file.plant.id), cases.get(file.plant.id)];
    return spot === undefined || found === undefined ? [] : [publicPlant(file, spot, found, taxonId, day)];
  });
  const { photos, originals, heldBack } = choosePhotos(book, files, publicSpots, day);
  const shownStages = table.stages.length > 0 ? table.stages : book.stages;
  return {
    taxon,
    table,
    photos,
    originals,
    input: {
      book: { title: info.title, notice: info.notice, illustrative: info.illustrative, language: info.language },
      table: { ...table, stages: [...shownStages] },
      taxonId,
      account,
      stages: shownStages,
      people,
      plants,
      // Counted here: of a sensitive plant the days are cut to months, and several become one.
      dayCount: new Set(files.flatMap((file) => file.outings.filter((outing) => outing.date <= day).map((outing) => outing.date))).size,
    },
    heldBack: [
      ...files.flatMap((file) => {
        const spot = publicSpots.get(file.plant.id);
        return spot === undefined ? [] : heldBackOfPlant(file, spot);
      }),
      ...heldBack,
    ],
    // Not only the spots of this account: a note may speak of a neighbour.
    secrets: spots.map((spot) => ({
      label: spot.name,
      lat: spot.lat,
      lon: spot.lon,
      publishAs: publishedAs(spot),
      name: isSensitive(spot) && spot.name.length >= 4 ? spot.name : null,
    })),
  };
};
