/**
 * Looks and readings of many specimens on a plain file: one row a specimen, one column a character (docs/guide/looks-csv.md).
 * A cell holds states (`four`, `clear | deep`, `clear or deep` when undecided), a measured series (`43 45 51.5 mm`),
 * `not there`, or `?` for could not tell; an empty cell was not looked at. `<character> n` and `<character> lens` may
 * stand beside a column.
 */
import { parse } from "csv-parse/browser/esm/sync";
import type { Problem } from "../base/result.js";
import type { IsoDate } from "../base/dates.js";
import type { LookId, OutingId, PlantId, ReadingId, StateId } from "../base/ids.js";
import type { Character } from "../characters/character.js";
import { look as lookSchema, reading as readingSchema, type Look, type Reading } from "../characters/evidence.js";
import type { ReferenceTable } from "../characters/reference-table.js";
import { readingSeries } from "../measurement/reading-series.js";
import { unguardText } from "./table-csv/layout.js";

export interface Specimen {
  readonly name: string;
  readonly looks: readonly Look[];
  readonly readings: readonly Reading[];
}

export interface LooksReading {
  readonly specimens: readonly Specimen[];
  readonly problems: readonly Problem[];
}

/** A file has no outings; every specimen is taken as seen on one day. */
const ON_FILE = { outingId: "file" as OutingId, date: "2000-01-01" as IsoDate } as const;

interface Place {
  readonly row: number;
  readonly plantId: PlantId;
  readonly n: number | null;
  readonly lens: string | null;
}

type CellReading = { readonly look: Look } | { readonly reading: Reading } | { readonly problem: Omit<Problem, "where"> } | null;

const readStates = (cell: string, character: Character, place: Place): CellReading => {
  if (character.answer.kind !== "states") return null;
  const undecided = /\sor\s/iu.test(cell);
  const words = cell.split(undecided ? /\s+or\s+/iu : "|").map((word) => word.trim());
  const states: StateId[] = [];
  for (const word of words) {
    const found =
      character.answer.states.find((state) => state.id === word) ??
      character.answer.states.find((state) => state.name.toLowerCase() === word.toLowerCase());
    if (found === undefined) {
      const has = character.answer.states.map((state) => state.id).join(", ");
      return { problem: { code: "unknown-state", value: cell, text: `"${word}" is no state of this character. It has: ${has}.` } };
    }
    states.push(found.id);
  }
  return {
    look: lookSchema.parse({
      ...ON_FILE,
      id: `${place.plantId}-${character.id}`.slice(0, 120) as LookId,
      plantId: place.plantId,
      characterId: character.id,
      status: "seen",
      states: [...new Set(states)],
      sure: undecided ? "between-two" : "sure",
      n: place.n,
      lens: place.lens,
    }),
  };
};

const withoutState = (status: "not-there" | "could-not-tell", character: Character, place: Place): CellReading => ({
  look: lookSchema.parse({
    ...ON_FILE,
    id: `${place.plantId}-${character.id}`.slice(0, 120),
    plantId: place.plantId,
    characterId: character.id,
    status,
    n: place.n,
    lens: place.lens,
  }),
});

const readMeasure = (cell: string, character: Character, place: Place): CellReading => {
  const unit = character.answer.kind === "measure" ? character.answer.unit : "";
  const series = readingSeries(cell, { unit });
  if (!series.ok) return { problem: { code: series.problem.code, value: cell, text: series.problem.text } };
  return {
    reading: readingSchema.parse({
      ...ON_FILE,
      id: `${place.plantId}-${character.id}`.slice(0, 120) as ReadingId,
      plantId: place.plantId,
      characterId: character.id,
      unit,
      values: series.value.values,
      stems: place.n,
    }),
  };
};

const readLookCell = (cell: string, character: Character, place: Place): CellReading => {
  if (cell === "") return null;
  if (cell.startsWith("="))
    return { problem: { code: "formula", value: cell, text: "This is a spreadsheet formula. Save the sheet with values." } };
  if (cell === "?") return character.answer.kind === "states" ? withoutState("could-not-tell", character, place) : null;
  if (/^not there$/iu.test(cell)) return withoutState("not-there", character, place);
  if (character.answer.kind === "ratio") {
    return { problem: { code: "ratio-column", value: cell, text: "A ratio is computed from its two measures; give those." } };
  }
  return character.answer.kind === "states" ? readStates(cell, character, place) : readMeasure(cell, character, place);
};

/** Reads a file of looks against a table. Problems name row and column; a row with a problem is not among the specimens. */
export const readLooksCsv = (csv: string, table: ReferenceTable): LooksReading => {
  const whole = (code: string, text: string): LooksReading => ({ specimens: [], problems: [{ code, where: "the file", text }] });
  if (csv.trim() === "") return whole("empty-file", "The file is empty. Its first row must be `specimen` and the ids of characters.");
  if (csv.includes("\uFFFD")) return whole("wrong-encoding", "The file is not UTF-8. Save it again as CSV UTF-8.");
  let rows: string[][];
  try {
    rows = parse(csv, { bom: true, relax_column_count: true, skip_empty_lines: true });
  } catch (error) {
    return whole("not-csv", `The file cannot be read as CSV: ${error instanceof Error ? error.message : String(error)}.`);
  }
  const [header = [], ...body] = rows.map((row) => row.map((cell) => unguardText(cell.trim())));
  if ((header[0] ?? "").toLowerCase() !== "specimen") return whole("no-specimen-column", "The first column must be called `specimen`.");
  const problems: Problem[] = [];
  const columns = header.slice(1).flatMap((name, index) => {
    const character =
      table.characters.find((c) => c.id === name) ?? table.characters.find((c) => c.name.toLowerCase() === name.toLowerCase());
    const beside = / (n|lens)$/u.test(name) && table.characters.some((c) => name.startsWith(`${c.id} `));
    if (character === undefined && !beside && name !== "" && name !== "note") {
      problems.push({
        code: "unknown-character",
        where: `row 1, column ${String(index + 2)}`,
        value: name,
        text: "The table has no character of this id or name.",
      });
    }
    return character === undefined ? [] : [{ index: index + 1, character }];
  });
  const specimens: Specimen[] = [];
  const seen = new Map<string, number>();
  body.forEach((cells, index) => {
    const row = index + 2;
    const before = problems.length;
    const name = cells[0] ?? "";
    if (name === "")
      problems.push({ code: "specimen-without-name", where: `row ${String(row)}`, text: "The first cell must name the specimen." });
    const earlier = seen.get(name);
    if (name !== "" && earlier !== undefined)
      problems.push({
        code: "specimen-twice",
        where: `row ${String(row)}`,
        value: name,
        text: `It stands already in row ${String(earlier)}.`,
      });
    seen.set(name, row);
    const looks: Look[] = [];
    const readings: Reading[] = [];
    for (const { index: at, character } of columns) {
      const beside = (what: string): string => cells[header.indexOf(`${character.id} ${what}`)] ?? "";
      const n = /^\d+$/u.test(beside("n")) && Number(beside("n")) > 0 ? Number(beside("n")) : null;
      const read = readLookCell(cells[at] ?? "", character, {
        row,
        plantId: `row${String(row)}` as PlantId,
        n,
        lens: beside("lens") || null,
      });
      if (read === null) continue;
      if ("problem" in read) problems.push({ ...read.problem, where: `row ${String(row)}, column ${character.id}` });
      else if ("look" in read) looks.push(read.look);
      else readings.push(read.reading);
    }
    if (problems.length === before) specimens.push({ name, looks, readings });
  });
  return { specimens, problems };
};
