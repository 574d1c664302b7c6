/**
 * What a record must agree with before it is kept: the things it names exist, its date is its outing's, its states are
 * those of its character. One function a kind; each returns the faults it found, none thrown, so that all are shown at once.
 */
import type {
  Account,
  BookInfo,
  Character,
  FollowedPlant,
  Happening,
  IsoDate,
  Look,
  Outing,
  Permission,
  Reading,
  ReferenceTable,
  Slip,
  Spot,
  StageRecord,
  Stop,
  View,
  Voucher,
} from "../engine/index.js";
import { dateOf, existenceOf } from "../engine/index.js";
import type { BookStore, RecordKind, RecordOf } from "../store/index.js";
import type { Word } from "../words/index.js";
import { say } from "../words/index.js";
import type { FieldFault } from "./app-error.js";

type Faults = readonly FieldFault[];
type Check<T> = (store: BookStore, record: T) => Promise<Faults>;

const kindWord = (kind: RecordKind | "table"): string => say(`kind.${kind}` satisfies Word);
const fault = (pointer: string, value: unknown, detail: string): FieldFault => ({ pointer, value: String(value).slice(0, 80), detail });
const listed = (names: readonly string[]): string => names.join(", ");

/** A fault when the book has no such record; `null` passes (the field may be empty). */
const known = async (store: BookStore, kind: RecordKind, id: string | null, pointer: string): Promise<Faults> => {
  if (id === null || (await store.get(kind, id)) !== undefined) return [];
  return [fault(pointer, id, say("refused.unknown", { kind: kindWord(kind), id }))];
};
const knownAll = async (store: BookStore, kind: RecordKind, ids: readonly string[], pointer: string): Promise<Faults> =>
  (await Promise.all(ids.map((id, i) => known(store, kind, id, `${pointer}/${i}`)))).flat();

/** Stages may be the book's or those of a table; both are named by the same ids. */
export const stageIsKnown = async (store: BookStore, id: string, table?: ReferenceTable): Promise<boolean> =>
  (await store.get("stage", id)) !== undefined || (table?.stages.some((stage) => stage.id === id) ?? false);

const knownStage = async (store: BookStore, id: string | null, pointer: string, table?: ReferenceTable): Promise<Faults> =>
  id === null || (await stageIsKnown(store, id, table))
    ? []
    : [fault(pointer, id, say("refused.unknown", { kind: kindWord("stage"), id }))];

/** The table of a plant; undefined when either is missing (the faults of the fields say so). */
export const tableOfPlant = async (store: BookStore, plantId: string): Promise<ReferenceTable | undefined> => {
  const plant = await store.get("plant", plantId);
  return plant === undefined ? undefined : store.table(plant.tableId);
};

/** The outing exists and `date` is its day. */
const onOuting = async (store: BookStore, outingId: string, date: IsoDate): Promise<Faults> => {
  const outing = await store.get("outing", outingId);
  if (outing === undefined) return known(store, "outing", outingId, "/outingId");
  return outing.date === date
    ? []
    : [fault("/date", date, say("refused.date-of-outing", { outing: outing.goal || outing.id, date: outing.date }))];
};

const zoneFaults = (zone: string, pointer: string): Faults => {
  try {
    new Intl.DateTimeFormat("en", { timeZone: zone });
    return [];
  } catch {
    // RangeError is how Intl says that it does not know the zone.
    return [fault(pointer, zone, say("refused.zone", { zone }))];
  }
};

/** @returns the faults of what is said of the book itself. */
export const checkInfo = (info: BookInfo): Faults => zoneFaults(info.zone, "/zone");

const checkView: Check<View> = async (store, view) => {
  const faults: FieldFault[] = [];
  for (const [i, id] of view.stages.entries()) faults.push(...(await knownStage(store, id, `/stages/${i}`)));
  return faults;
};

const checkSpot: Check<Spot> = async (_store, spot) => [
  ...zoneFaults(spot.zone, "/zone"),
  ...(spot.sensitiveBecause !== "" && spot.publishAs === "as-measured"
    ? [fault("/publishAs", spot.publishAs, say("refused.sensitive-as-measured"))]
    : []),
];

const checkPermission: Check<Permission> = async (store, permission) => [
  ...(permission.to < permission.from
    ? [fault("/to", permission.to, say("refused.dates-order", { from: permission.from, to: permission.to }))]
    : []),
  ...(await knownAll(store, "spot", permission.spotIds, "/spotIds")),
];

/** Characters that looks and readings of a plant speak of. */
const charactersUsed = async (store: BookStore, plantId: string): Promise<ReadonlySet<string>> => {
  const [looks, readings] = await Promise.all([store.list("look"), store.list("reading")]);
  return new Set([...looks, ...readings].filter((entry) => entry.plantId === plantId).map((entry) => entry.characterId));
};

const checkPlant: Check<FollowedPlant> = async (store, plant) => {
  const faults: FieldFault[] = [...(await known(store, "spot", plant.spotId, "/spotId"))];
  const table = await store.table(plant.tableId);
  if (table === undefined)
    faults.push(fault("/tableId", plant.tableId, say("refused.unknown", { kind: kindWord("table"), id: plant.tableId })));
  else {
    faults.push(...taxaFaults(table, plant.rivalIds, "/rivalIds"));
    const had = await store.get("plant", plant.id);
    if (had !== undefined && had.tableId !== plant.tableId) {
      const has = new Set<string>(table.characters.map((character) => character.id));
      const lost = [...(await charactersUsed(store, plant.id))].filter((id) => !has.has(id));
      if (lost.length > 0)
        faults.push(fault("/tableId", plant.tableId, say("refused.plant-table", { characters: listed(lost), table: table.title })));
    }
  }
  if (plant.markedStemCount !== null && plant.stemCount !== null && plant.markedStemCount > plant.stemCount)
    faults.push(
      fault("/markedStemCount", plant.markedStemCount, say("refused.marked", { marked: plant.markedStemCount, stems: plant.stemCount })),
    );
  return faults;
};

const taxaFaults = (table: ReferenceTable, ids: readonly string[], pointer: string): Faults => {
  const has = table.taxa.map((taxon): string => taxon.id);
  return ids.flatMap((id, i) =>
    has.includes(id)
      ? []
      : [
          fault(
            `${pointer}/${i}`,
            id,
            say("refused.unknown-in-table", { table: table.title, kind: "taxon", id, has: listed(has.slice(0, 20)) }),
          ),
        ],
  );
};

const checkHappening: Check<Happening> = (store, happening) => known(store, "plant", happening.plantId, "/plantId");
const checkOuting: Check<Outing> = async () => [];

const checkStop: Check<Stop> = async (store, stop) => {
  const faults: FieldFault[] = [...(await known(store, "plant", stop.plantId, "/plantId"))];
  const outing = await store.get("outing", stop.outingId);
  if (outing === undefined) faults.push(...(await known(store, "outing", stop.outingId, "/outingId")));
  else if (dateOf(stop.from) !== outing.date)
    faults.push(fault("/from", stop.from, say("refused.stop-day", { outing: outing.goal || outing.id, date: outing.date })));
  if (stop.to < stop.from) faults.push(fault("/to", stop.to, say("refused.stop-order", { from: stop.from, to: stop.to })));
  return faults;
};

const checkStageRecord: Check<StageRecord> = async (store, record) => [
  ...(await known(store, "plant", record.plantId, "/plantId")),
  ...(await onOuting(store, record.outingId, record.date)),
  ...(await knownStage(store, record.stageId, "/stageId", await tableOfPlant(store, record.plantId))),
  ...(record.stageId === null && record.why.trim() === "" ? [fault("/why", record.why, say("refused.stage-why"))] : []),
];

interface InTable {
  readonly faults: Faults;
  readonly table: ReferenceTable | undefined;
  readonly character: Character | undefined;
}

/** The plant, its table and the character in it. */
const characterOf = async (store: BookStore, plantId: string, characterId: string): Promise<InTable> => {
  const faults = await known(store, "plant", plantId, "/plantId");
  const table = await tableOfPlant(store, plantId);
  const character = table?.characters.find((one) => one.id === characterId);
  if (table === undefined || character !== undefined) return { faults, table, character };
  const near = table.characters.map((one): string => one.id).slice(0, 40);
  const detail = say("refused.unknown-in-table", { table: table.title, kind: "character", id: characterId, has: listed(near) });
  return { faults: [...faults, fault("/characterId", characterId, detail)], table, character };
};

/** The character exists only where another has certain states, and that other was seen or looked for without them. */
const onlyIfFaults = async (store: BookStore, plantId: string, table: ReferenceTable, character: Character): Promise<Faults> => {
  const gate = character.onlyIf;
  if (gate === null) return [];
  const other = table.characters.find((one) => one.id === gate.character);
  const looks = (await store.list("look")).filter((look) => look.plantId === plantId);
  const { exists, said } = existenceOf(character, table.characters, looks);
  if (exists) return [];
  const stateNames = (ids: readonly string[]): string => {
    const states = other?.answer.kind === "states" ? other.answer.states : [];
    return listed([...new Set(ids)].map((id) => states.find((state) => state.id === id)?.name ?? id));
  };
  const detail = say("refused.only-if", {
    character: character.name,
    other: other?.name ?? gate.character,
    states: stateNames(gate.states),
    found: stateNames(said),
  });
  return [fault("/characterId", character.id, detail)];
};

const checkLook: Check<Look> = async (store, look) => {
  const { faults: first, table, character } = await characterOf(store, look.plantId, look.characterId);
  const faults: FieldFault[] = [...first, ...(await onOuting(store, look.outingId, look.date))];
  if (table !== undefined && character !== undefined) {
    if (character.answer.kind === "states") {
      const has = character.answer.states;
      for (const [i, id] of look.states.entries())
        if (!has.some((state) => state.id === id))
          faults.push(
            fault(
              `/states/${i}`,
              id,
              say("refused.state", { character: character.name, state: id, has: listed(has.map((state) => state.id)) }),
            ),
          );
    } else if (look.status === "seen")
      faults.push(fault("/characterId", look.characterId, say("refused.look-of-measure", { character: character.name })));
    if (look.status === "seen" && look.leaveOut === null) faults.push(...(await onlyIfFaults(store, look.plantId, table, character)));
  }
  faults.push(...(await knownAll(store, "photo", look.photoIds, "/photoIds")));
  return faults;
};

const checkReading: Check<Reading> = async (store, reading) => {
  const { faults: first, table, character } = await characterOf(store, reading.plantId, reading.characterId);
  const faults: FieldFault[] = [...first, ...(await onOuting(store, reading.outingId, reading.date))];
  if (table !== undefined && character !== undefined) {
    const answer = character.answer;
    if (answer.kind === "states")
      faults.push(fault("/characterId", reading.characterId, say("refused.reading-of-states", { character: character.name })));
    if (answer.kind === "ratio")
      faults.push(fault("/characterId", reading.characterId, say("refused.reading-of-ratio", { character: character.name })));
    if (answer.kind === "measure" && answer.unit !== reading.unit)
      faults.push(
        fault("/unit", reading.unit, say("refused.unit", { character: character.name, unit: answer.unit, given: reading.unit || "—" })),
      );
    for (const [i, value] of reading.values.entries()) {
      if (value < 0)
        faults.push(fault(`/values/${i}`, value, say("refused.negative", { character: character.name, value: String(value) })));
      if (answer.kind === "count" && !Number.isInteger(value))
        faults.push(fault(`/values/${i}`, value, say("refused.whole-number", { character: character.name, value: String(value) })));
    }
    if (reading.leaveOut === null) faults.push(...(await onlyIfFaults(store, reading.plantId, table, character)));
  }
  faults.push(...(await knownAll(store, "photo", reading.photoIds, "/photoIds")));
  return faults;
};

const checkSlip: Check<Slip> = async (store, slip) => {
  const faults: FieldFault[] = [...(await known(store, "plant", slip.plantId, "/plantId"))];
  const table = await tableOfPlant(store, slip.plantId);
  if (table !== undefined) faults.push(...taxaFaults(table, slip.taxonIds, "/taxonIds"));
  const had = await store.get("slip", slip.id);
  if (had !== undefined && JSON.stringify({ ...had, overturned: false }) !== JSON.stringify({ ...slip, overturned: false }))
    faults.push(fault("/id", slip.id, say("refused.slip-stands")));
  return faults;
};

const checkVoucher: Check<Voucher> = (store, voucher) => known(store, "plant", voucher.plantId, "/plantId");

const checkAccount: Check<Account> = async (store, account) => {
  const table = await store.table(account.tableId);
  if (table === undefined)
    return [fault("/tableId", account.tableId, say("refused.unknown", { kind: kindWord("table"), id: account.tableId }))];
  return [...taxaFaults(table, [account.taxonId], "/taxonId"), ...(await knownAll(store, "plant", account.plantIds, "/plantIds"))];
};

/** The kinds that people write one by one; photographs and stages come by other ways. */
export type WrittenKind = Exclude<RecordKind, "photo" | "stage">;

const checks: { readonly [K in WrittenKind]: Check<RecordOf[K]> } = {
  person: async () => [],
  view: checkView,
  spot: checkSpot,
  permission: checkPermission,
  plant: checkPlant,
  happening: checkHappening,
  outing: checkOuting,
  stop: checkStop,
  stageRecord: checkStageRecord,
  look: checkLook,
  reading: checkReading,
  slip: checkSlip,
  voucher: checkVoucher,
  account: checkAccount,
};

/** What is wrong with a record against the book as it stands; empty = nothing. */
export const checkRecord = <K extends WrittenKind>(store: BookStore, kind: K, record: RecordOf[K]): Promise<Faults> =>
  checks[kind](store, record);
