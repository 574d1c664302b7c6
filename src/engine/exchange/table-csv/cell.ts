/**
 * One cell of the table: states (`four | two (none)`, the rare ones in brackets), a measure in flora notation
 * (`(30-)40-60(-70)`), `n/a` for not applicable, empty or `?` for unknown.
 */
import { fail, ok, type Problem, type Result } from "../../base/result.js";
import type { StateId } from "../../base/ids.js";
import type { Character, State } from "../../characters/character.js";
import type { ScoreValue } from "../../characters/reference-table.js";
import { convertLength } from "../../measurement/length-unit.js";
import { readFloraRange } from "../../measurement/read-flora-range.js";
import { LIST_MARK } from "./layout.js";

/** What a cell says before it is known which character it belongs to. */
export type CellProblem = Pick<Problem, "code" | "text">;

const cellProblem = (code: string, text: string): Result<never, CellProblem> => fail({ code, text });

const findState = (states: readonly State[], word: string): StateId | undefined =>
  states.find((state) => state.id === word)?.id ?? states.find((state) => state.name.toLowerCase() === word.toLowerCase())?.id;

/** The words of a cell of states: usual ones, and rare ones in brackets. */
export const stateWords = (cell: string): { readonly usual: readonly string[]; readonly rarely: readonly string[] } => {
  const usual: string[] = [];
  const rarely: string[] = [];
  for (const part of cell.split(LIST_MARK)) {
    for (const piece of part.matchAll(/\(([^()]*)\)|([^()]+)/gu)) {
      const word = (piece[1] ?? piece[2] ?? "").trim();
      if (word !== "") (piece[1] === undefined ? usual : rarely).push(word);
    }
  }
  return { usual, rarely };
};

const readStates = (cell: string, states: readonly State[]): Result<ScoreValue, CellProblem> => {
  const words = stateWords(cell);
  const unknown = [...words.usual, ...words.rarely].filter((word) => findState(states, word) === undefined);
  if (unknown.length > 0) {
    return cellProblem(
      "unknown-state",
      `"${unknown.join('", "')}" is no state of this character. It has: ${states.map((state) => state.id).join(", ")}. Correct the cell, or add the state to the #states row.`,
    );
  }
  const ids = (list: readonly string[]): StateId[] => [...new Set(list.flatMap((word) => findState(states, word) ?? []))];
  const usual = ids(words.usual);
  const rarely = ids(words.rarely).filter((state) => !usual.includes(state));
  if (usual.length + rarely.length === 0)
    return cellProblem("unreadable-cell", "There is no state here. Leave the cell empty if nobody says.");
  return ok({ kind: "states", usual, rarely });
};

const readMeasure = (cell: string, unit: string): Result<ScoreValue, CellProblem> => {
  const read = readFloraRange(cell);
  if (!read.ok) return fail({ code: read.problem.code, text: read.problem.text });
  const range = read.value;
  if (range.kind !== "range" || range.low === null || range.high === null) {
    return cellProblem("not-a-range", `Write one range with both ends, such as 40-60 or (30-)40-60(-70).`);
  }
  const factor = (value: number | null): number | null =>
    value === null || range.unit === null || range.unit === unit ? value : convertLength(value, range.unit, unit);
  const [low, high] = [factor(range.low), factor(range.high)];
  if (low === null || high === null) {
    return cellProblem("wrong-unit", `This column is in ${unit === "" ? "no unit" : unit}; ${range.unit ?? ""} cannot be converted to it.`);
  }
  return ok({ kind: "range", min: factor(range.min), low, high, max: factor(range.max) });
};

/** Reads a cell of a character's column. */
export const readCell = (cell: string, character: Character): Result<ScoreValue, CellProblem> => {
  const text = cell.trim();
  if (text === "" || text === "?") return ok({ kind: "unknown" });
  if (/^n\/?a\.?$/iu.test(text)) return ok({ kind: "not-applicable" });
  if (text.startsWith("=")) return cellProblem("formula", "This is a spreadsheet formula. Save the sheet with values instead of formulas.");
  const { answer } = character;
  switch (answer.kind) {
    case "states":
      return readStates(text, answer.states);
    case "measure":
      return readMeasure(text, answer.unit);
    case "count":
    case "ratio":
      return readMeasure(text, "");
  }
};

/** Writes a cell; numbers in full, so that reading gives the same ones back. */
export const writeCell = (value: ScoreValue): string => {
  switch (value.kind) {
    case "unknown":
      return "";
    case "not-applicable":
      return "n/a";
    case "states":
      return [...value.usual, ...value.rarely.map((state) => `(${state})`)].join(` ${LIST_MARK} `);
    case "range": {
      const { min, low, high, max } = value;
      const before = min === null ? "" : `(${String(min)}-)`;
      const after = max === null ? "" : `(-${String(max)})`;
      return `${before}${low === high && min === null && max === null ? String(low) : `${String(low)}-${String(high)}`}${after}`;
    }
  }
};
