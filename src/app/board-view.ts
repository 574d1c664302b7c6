/** The evidence board in words. */
import {
  evidenceBoard,
  proofOfCell,
  sampleNotation,
  stageWindow,
  type EvidenceCell,
  type EvidenceRow,
  type IsoDate,
  type Stage,
} from "../engine/index.js";
import type { Board, BoardCell } from "../contract/index.js";
import { say } from "../words/index.js";
import { RATIO_ERROR, shortDay, toolText, type TableWords } from "./case-words.js";
import { stagesOf, type BookFile, type PlantFile } from "./plant-evidence.js";

const unitOf = (row: EvidenceRow): string => (row.character.answer.kind === "measure" ? row.character.answer.unit : "");

/** Error that rules the decimals of a tile; null = as typed. */
const errorOf = (row: EvidenceRow): number | null => (row.character.answer.kind === "ratio" ? RATIO_ERROR : null);

const whatSeen = (words: TableWords, row: EvidenceRow, cell: EvidenceCell): string =>
  cell.values.length > 0
    ? `${sampleNotation(cell.values, { unit: unitOf(row), error: errorOf(row) }).text}, n = ${String(cell.values.length)}`
    : words.stateNames(row.character.id, cell.states, "or");

const tileLabel = (words: TableWords, row: EvidenceRow, cell: EvidenceCell): string => {
  switch (cell.kind) {
    case "seen":
      return cell.values.length > 0
        ? sampleNotation(cell.values, { unit: unitOf(row), error: errorOf(row) }).text
        : words.stateNames(row.character.id, cell.states, "or");
    case "not-there":
      return say("board.label-not-there");
    case "could-not-tell":
      return say("board.label-cannot-tell");
    case "open":
    case "cannot":
      return "";
  }
};

const whenSeen = (stage: Stage, day: IsoDate): string => {
  const window = stageWindow(stage, Number(day.slice(0, 4)));
  return window === null ? say("board.in-stage") : say("board.window", { from: shortDay(window.from), to: shortDay(window.to) });
};

const tileSentence = (words: TableWords, row: EvidenceRow, cell: EvidenceCell, stage: Stage, day: IsoDate): string => {
  const at = { character: row.character.name, stage: stage.name };
  switch (cell.kind) {
    case "seen":
      return say("board.seen", { ...at, what: whatSeen(words, row, cell) });
    case "not-there": {
      const notes = cell.looks.flatMap((look) => (look.note === "" ? [] : [look.note]));
      return say("board.not-there", { ...at, what: notes.length === 0 ? "none" : notes.join("; ") });
    }
    case "could-not-tell":
      return say("board.could-not-tell", at);
    case "open":
      return say(row.character.disturbs ? "board.open-disturbs" : "board.open", {
        ...at,
        when: whenSeen(stage, day),
        tool: toolText(row.character.tool),
      });
    case "cannot":
      return say("board.cannot", at);
  }
};

/** The board of a plant up to a day. */
export const boardView = (book: BookFile, file: PlantFile, words: TableWords, day: IsoDate): Board => {
  const stages = stagesOf(book, file);
  const upTo = <T extends { readonly date: string }>(records: readonly T[]): readonly T[] => records.filter((record) => record.date <= day);
  const rows = evidenceBoard({
    characters: file.table.characters,
    stages,
    looks: upTo(file.looks),
    readings: upTo(file.readings),
    stageRecords: file.stageRecords,
    photos: file.photos,
    views: book.views,
  });
  const cellView = (row: EvidenceRow, cell: EvidenceCell, stage: Stage): BoardCell => {
    const sentence = tileSentence(words, row, cell, stage, day);
    const { lookIds, readingIds } = proofOfCell(cell);
    return {
      stageId: cell.stageId,
      kind: cell.kind,
      label: tileLabel(words, row, cell),
      sentence: cell.leftOut ? say("board.left-out", { sentence }) : sentence,
      leftOut: cell.leftOut,
      lookIds: [...lookIds],
      readingIds: [...readingIds],
      photoIds: [...cell.photoIds],
    };
  };
  return {
    stages: [...stages],
    rows: rows.map((row) => ({
      characterId: row.character.id,
      part: row.character.part,
      name: row.character.name,
      tool: row.character.tool,
      group: row.character.group,
      disturbs: row.character.disturbs,
      applies: row.applies,
      cells: row.cells.flatMap((cell, index) => {
        const stage = stages[index];
        return stage === undefined ? [] : [cellView(row, cell, stage)];
      }),
    })),
  };
};
