/**
 * The evidence board of a plant: characters by stages, each cell what was seen there, what was looked for and not there, what
 * could not be told, what is still open, and what cannot be seen then. A blank never means absent.
 */
import type { LookId, PhotoId, ReadingId, StageId, StateId } from "../base/ids.js";
import type { Character } from "./character.js";
import type { Look, Reading } from "./evidence.js";
import { existenceOf } from "./existence.js";
import type { Photo, StageRecord } from "./followed-plant.js";
import { ratiosOf } from "./ratios.js";
import { compareParts, partOfPhoto, type Stage, type View } from "./vocabulary.js";

export type BoardCellKind = "seen" | "not-there" | "could-not-tell" | "open" | "cannot";

export interface EvidenceCell {
  readonly stageId: StageId;
  readonly kind: BoardCellKind;
  /** States seen in this stage; empty for measures. */
  readonly states: readonly StateId[];
  /** Values measured in this stage (organ-wise ratios for ratios). */
  readonly values: readonly number[];
  /** Everything of this cell is left out. */
  readonly leftOut: boolean;
  readonly looks: readonly Look[];
  readonly readings: readonly Reading[];
  readonly photoIds: readonly PhotoId[];
}

export interface EvidenceRow {
  readonly character: Character;
  /** False when what was seen of its parent says that it does not exist here (no stalk, no stalk length). */
  readonly applies: boolean;
  readonly cells: readonly EvidenceCell[];
}

export interface BoardInput {
  readonly characters: readonly Character[];
  readonly stages: readonly Stage[];
  readonly looks: readonly Look[];
  readonly readings: readonly Reading[];
  readonly stageRecords: readonly StageRecord[];
  readonly photos: readonly Photo[];
  readonly views: readonly View[];
}

/** The leading stage of each outing: the last one recorded as yes. */
const stageByOuting = (records: readonly StageRecord[]): ReadonlyMap<string, StageId> =>
  new Map(
    records.flatMap((record) => (record.answer === "yes" && record.stageId !== null ? [[record.outingId, record.stageId] as const] : [])),
  );

const kindOf = (looks: readonly Look[], readings: readonly Reading[], character: Character, stageId: StageId): BoardCellKind => {
  if (readings.length > 0 || looks.some((look) => look.status === "seen")) return "seen";
  if (looks.some((look) => look.status === "not-there")) return "not-there";
  if (looks.some((look) => look.status === "could-not-tell")) return "could-not-tell";
  return character.seenIn.includes(stageId) ? "open" : "cannot";
};

const placeOf = (stageId: string, part: string): string => JSON.stringify([stageId, part]);

/** Photographs by stage and part, so that thousands of them are gone through once and not for every cell. */
const picturesBy = ({ photos, views }: BoardInput): ReadonlyMap<string, readonly PhotoId[]> => {
  const found = new Map<string, PhotoId[]>();
  for (const photo of photos) {
    if (photo.stageId === null) continue;
    const place = placeOf(photo.stageId, partOfPhoto(photo, views));
    const there = found.get(place);
    if (there === undefined) found.set(place, [photo.id]);
    else there.push(photo.id);
  }
  return found;
};

/** The values a character has in some readings: its own, or organ by organ for a ratio. */
const valuesOf = ({ answer }: Character, readings: readonly Reading[]): readonly number[] =>
  answer.kind === "ratio" ? ratiosOf(readings, answer.numerator, answer.denominator).values : readings.flatMap((reading) => reading.values);

/**
 * The board, rows in flora order of parts. Evidence of an outing without a stage of the board stands in the first stage in which the
 * character can be seen, so that nothing recorded is hidden.
 */
export const evidenceBoard = (input: BoardInput): readonly EvidenceRow[] => {
  const has = new Set<string>(input.stages.map((stage) => stage.id));
  const stageOf = stageByOuting(input.stageRecords.filter((record) => record.stageId !== null && has.has(record.stageId)));
  const pictured = picturesBy(input);
  const rows = input.characters.map((character): EvidenceRow => {
    const fallback = character.seenIn.find((stage) => has.has(stage)) ?? input.stages[0]?.id;
    const belongs = (piece: { readonly outingId: string }, stageId: StageId): boolean =>
      (stageOf.get(piece.outingId) ?? fallback) === stageId;
    const answer = character.answer;
    const readsFor = (reading: Reading): boolean =>
      answer.kind === "ratio"
        ? reading.characterId === answer.numerator || reading.characterId === answer.denominator
        : reading.characterId === character.id;
    const ownLooks = input.looks.filter((look) => look.characterId === character.id && look.status !== "not-looked");
    const ownReadings = input.readings.filter(readsFor);
    const cells = input.stages.map((stage): EvidenceCell => {
      const looks = ownLooks.filter((look) => belongs(look, stage.id));
      const readings = ownReadings.filter((reading) => belongs(reading, stage.id));
      const counting = { looks: looks.filter((l) => l.leaveOut === null), readings: readings.filter((r) => r.leaveOut === null) };
      const leftOut = looks.length + readings.length > 0 && counting.looks.length + counting.readings.length === 0;
      const shown = leftOut ? { looks, readings } : counting;
      const values = valuesOf(character, shown.readings);
      const speaking = answer.kind === "ratio" && values.length === 0 ? [] : shown.readings;
      const photoIds = [...shown.looks, ...shown.readings].flatMap((piece) => piece.photoIds);
      return {
        stageId: stage.id,
        kind: kindOf(shown.looks, speaking, character, stage.id),
        states: [...new Set(shown.looks.flatMap((look) => look.states))],
        values,
        leftOut,
        looks,
        readings,
        photoIds: [...new Set([...photoIds, ...(pictured.get(placeOf(stage.id, character.part)) ?? [])])],
      };
    });
    return { character, applies: existenceOf(character, input.characters, input.looks).exists, cells };
  });
  return rows.toSorted((a, b) => compareParts(a.character.part, b.character.part));
};

/** The ids of a cell's looks and readings. */
export const proofOfCell = (cell: EvidenceCell): { readonly lookIds: readonly LookId[]; readonly readingIds: readonly ReadingId[] } => ({
  lookIds: cell.looks.map((look) => look.id),
  readingIds: cell.readings.map((reading) => reading.id),
});
