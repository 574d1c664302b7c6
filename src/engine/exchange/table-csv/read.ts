/**
 * Reads a reference table from CSV: all or nothing, with every problem named by row and column. A table as small as a column
 * `taxon` and one column a character is enough; rows that begin with `#` say more (docs/guide/table-csv.md).
 */
import { parse } from "csv-parse/browser/esm/sync";
import type { Problem } from "../../base/result.js";
import { character as characterSchema, type Character } from "../../characters/character.js";
import { referenceTable, type ReferenceTable } from "../../characters/reference-table.js";
import type { Stage } from "../../characters/vocabulary.js";
import { readCell } from "./cell.js";
import { characterFrom, yes } from "./character-column.js";
import { checkReferences } from "./check-references.js";
import { Collector } from "./collector.js";
import {
  characterRows,
  ownRows,
  splitList,
  taxonColumns,
  unguardText,
  vernacularColumn,
  type CharacterRow,
  type OwnRow,
  type TaxonColumn,
} from "./layout.js";

export interface TableReading {
  /** null while there is a problem: nothing is taken in by halves. */
  readonly table: ReferenceTable | null;
  readonly problems: readonly Problem[];
  /** Things worth knowing that do not stop it: empty columns, kinds read off the cells. */
  readonly remarks: readonly Problem[];
}

const MOST_COLUMNS = 5000;

interface Row {
  readonly number: number;
  readonly cells: readonly string[];
}

/** The separator: of comma, semicolon and tab the one that occurs most in the first line. */
const separatorOf = (csv: string): string => {
  const line = csv.slice(0, csv.search(/[\r\n]|$/u));
  const count = (mark: string): number => line.split(mark).length - 1;
  return [",", ";", "\t"].toSorted((a, b) => count(b) - count(a))[0] ?? ",";
};

const readRows = (csv: string): { readonly rows: readonly Row[] } | { readonly problem: Problem } => {
  if (csv.trim() === "")
    return {
      problem: { code: "empty-file", where: "the file", text: "The file is empty. It needs a header row that begins with `taxon`." },
    };
  if (csv.includes("\uFFFD")) {
    return {
      problem: {
        code: "wrong-encoding",
        where: "the file",
        text: 'Some letters were lost: the file is not UTF-8 (perhaps Latin-1). In the spreadsheet choose "CSV UTF-8" when saving, then bring it again.',
      },
    };
  }
  try {
    const records = parse(csv, {
      bom: true,
      delimiter: separatorOf(csv.replace(/^\uFEFF/u, "")),
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      max_record_size: 4_000_000,
    }) as unknown as { readonly record: string[]; readonly info: { readonly lines: number } }[];
    return { rows: records.map(({ record, info }) => ({ number: info.lines, cells: record.map((cell) => unguardText(cell.trim())) })) };
  } catch (error) {
    const text = error instanceof Error ? error.message : String(error);
    return {
      problem: {
        code: "not-csv",
        where: "the file",
        text: `The file cannot be read as CSV: ${text}. Save it again as CSV from the spreadsheet.`,
      },
    };
  }
};

interface Sheet {
  readonly header: readonly string[];
  readonly described: ReadonlyMap<CharacterRow, readonly string[]>;
  readonly own: readonly (Row & { readonly kind: OwnRow })[];
  readonly taxa: readonly Row[];
}

const sortRows = (rows: readonly Row[], out: Collector): Sheet => {
  const [first, ...body] = rows;
  const described = new Map<CharacterRow, readonly string[]>();
  const own: (Row & { kind: OwnRow })[] = [];
  const taxa: Row[] = [];
  for (const row of body) {
    const key = (row.cells[0] ?? "").toLowerCase();
    const characterRow = characterRows.find((name) => name === key);
    const ownRow = ownRows.find((name) => name === key);
    if (characterRow !== undefined) described.set(characterRow, row.cells);
    else if (ownRow !== undefined) own.push({ ...row, kind: ownRow });
    else if (key.startsWith("#")) {
      out.add(
        "unknown-row",
        `row ${String(row.number)}`,
        `Rows may begin with ${[...ownRows, ...characterRows].join(", ")}. Correct or remove this row.`,
        row.cells[0],
      );
    } else taxa.push(row);
  }
  return { header: first?.cells ?? [], described, own, taxa };
};

const ownData = (sheet: Sheet): { title: string | null; notice: string; stages: unknown[]; sources: unknown[]; hybrids: unknown[] } => {
  const of = (kind: OwnRow): readonly (readonly string[])[] => sheet.own.filter((row) => row.kind === kind).map((row) => row.cells);
  return {
    title: of("#title")[0]?.[1] ?? null,
    notice: of("#notice")[0]?.[1] ?? "",
    stages: of("#stage").map(([, id, name, bbch = "", looksLike = "", usualMonths = ""]) => ({
      id,
      name,
      bbch: splitList(bbch),
      looksLike,
      usualMonths,
    })),
    sources: of("#source").map(([, id, citation, licence = ""]) => ({ id, citation, licence })),
    hybrids: of("#hybrid").map(([, a, b, note = ""]) => ({ parents: [a, b], note })),
  };
};

/**
 * Reads a table.
 * @param csv the text of the file, decoded as UTF-8
 * @param as id and title the table gets (the file's own `#title` is used when `title` is empty), and the stages of the book,
 *   used when the file names none
 */
export const readTableCsv = (
  csv: string,
  as: { readonly id: string; readonly title: string; readonly stages: readonly Stage[] },
): TableReading => {
  const read = readRows(csv);
  if ("problem" in read) return { table: null, problems: [read.problem], remarks: [] };
  const out = new Collector();
  const remarks = new Collector();
  const sheet = sortRows(read.rows, out);
  const headings = sheet.header.map((heading) => heading.trim());
  const lower = headings.map((heading) => heading.toLowerCase());
  if (lower[0] !== "taxon") {
    out.add(
      "no-taxon-column",
      "row 1, column 1",
      "The first column must be called `taxon` and hold a short name of each taxon.",
      headings[0] ?? "",
    );
  }
  if (headings.length > MOST_COLUMNS)
    out.add("too-many-columns", "row 1", `At most ${String(MOST_COLUMNS)} columns can be read.`, String(headings.length));
  const taxonColumn = (name: TaxonColumn): number => lower.indexOf(name);
  const characterIndexes = headings.flatMap((_, index) => {
    const name = lower[index] ?? "";
    return name === "" || taxonColumns.some((column) => column === name) || vernacularColumn.test(name) ? [] : [index];
  });
  headings.forEach((heading, index) => {
    if (heading === "" && read.rows.some((row) => (row.cells[index] ?? "") !== "" && !(row.cells[0] ?? "").startsWith("#"))) {
      out.add("column-without-name", `row 1, column ${String(index + 1)}`, "This column has values and no name. Name it in the first row.");
    } else if (heading !== "" && lower.indexOf(lower[index] ?? "") !== index) {
      out.add("column-twice", `row 1, column ${String(index + 1)}`, "Two columns have this name. Give each its own.", heading);
    }
  });
  if (characterIndexes.length === 0)
    out.add("no-characters", "row 1", "There is no column of a character beside the taxa. Add one column a character.");
  if (sheet.taxa.length === 0) out.add("no-taxa", "the file", "There is no row of a taxon below the header.");
  const cellOf = (row: Row, index: number): string => (index < 0 ? "" : (row.cells[index] ?? ""));

  const characters: { readonly index: number; readonly character: Character }[] = [];
  for (const index of characterIndexes) {
    const columns = new Map(characterRows.map((row) => [row, sheet.described.get(row)?.[index] ?? ""]));
    const cells = sheet.taxa.map((row) => cellOf(row, index));
    const where = `column ${headings[index] ?? ""}`;
    if (cells.every((cell) => cell === "") && (columns.get("#kind") ?? "") === "") {
      remarks.add("empty-column", where, "No taxon has a value here; the column was passed over.");
      continue;
    }
    const parsed = characterSchema.safeParse(characterFrom(headings[index] ?? "", columns, cells));
    if (parsed.success) characters.push({ index, character: parsed.data });
    else out.addIssues(where, parsed.error);
  }

  const own = ownData(sheet);
  const seen = new Map<string, number>();
  const taxa: unknown[] = [];
  const scores: unknown[] = [];
  for (const row of sheet.taxa) {
    const id = cellOf(row, 0);
    const where = `row ${String(row.number)}`;
    const before = seen.get(id.toLowerCase());
    if (before !== undefined)
      out.add("taxon-twice", where, `This taxon stands already in row ${String(before)}. Put both into one row.`, id);
    seen.set(id.toLowerCase(), row.number);
    if (row.cells.length > headings.length)
      out.add("too-many-cells", where, `The row has ${String(row.cells.length)} cells, the header ${String(headings.length)}.`);
    const at = (column: TaxonColumn): string => cellOf(row, taxonColumn(column));
    const taxonId = id
      .normalize("NFKD")
      .replaceAll(/[^A-Za-z0-9._:-]+/gu, "_")
      .replaceAll(/^[^A-Za-z0-9]+|_+$/gu, "");
    if (taxonId === "") {
      out.add("taxon-without-name", where, "The first cell of a taxon's row must name it.");
      continue;
    }
    if (id.startsWith("="))
      out.add("formula", `${where}, column taxon`, "This is a spreadsheet formula. Save the sheet with values instead of formulas.", id);
    const vernacular = headings.flatMap((heading, index) => {
      const language = vernacularColumn.exec(heading)?.[1];
      const name = cellOf(row, index);
      return language === undefined || name === "" ? [] : [[language, name] as const];
    });
    taxa.push({
      id: taxonId,
      name: at("name") || id,
      authorship: at("authorship"),
      family: at("family"),
      ...(at("rank") === "" ? {} : { rank: at("rank") }),
      synonyms: splitList(at("synonyms")),
      vernacular: Object.fromEntries<string>(vernacular),
      status: at("status"),
      flowerMonths: at("flower months"),
      band: at("band"),
      inOneLine: at("in one line"),
      expectedInCounty: yes(at("expected"), true),
      cautions: splitList(at("cautions")),
    });
    for (const { index, character } of characters) {
      const cell = cellOf(row, index);
      const value = readCell(cell, character);
      if (!value.ok) out.add(value.problem.code, `${where}, column ${headings[index] ?? ""}`, value.problem.text, cell);
      else if (value.value.kind !== "unknown") {
        scores.push({ taxonId, characterId: character.id, value: value.value, sourceId: at("source") === "" ? null : at("source") });
      }
    }
  }
  for (const row of sheet.own.filter(({ kind }) => kind === "#score")) {
    const [, taxonId = "", characterId = "", cell = "", sourceId = "", page = "", words = ""] = row.cells;
    const where = `row ${String(row.number)}`;
    const character = characters.find((c) => c.character.id === characterId)?.character;
    if (character === undefined) {
      out.add("unknown-character", where, "There is no column of this character.", characterId);
      continue;
    }
    const value = readCell(cell, character);
    if (value.ok) scores.push({ taxonId, characterId, value: value.value, sourceId: sourceId === "" ? null : sourceId, page, words });
    else out.add(value.problem.code, where, value.problem.text, cell);
  }

  const candidate = {
    id: as.id,
    title: as.title || own.title || as.id,
    notice: own.notice,
    stages: own.stages.length > 0 ? own.stages : as.stages,
    characters: characters.map(({ character }) => character),
    taxa,
    scores,
    sources: own.sources,
    knownHybrids: own.hybrids,
  };
  const table = referenceTable.safeParse(candidate);
  if (!table.success) out.addIssues("the table", table.error);
  else checkReferences(table.data, out);
  if (out.count > out.problems.length)
    out.problems.push({ code: "and-more", where: "the file", text: `and ${String(out.count - out.problems.length)} more` });
  return { table: table.success && out.count === 0 ? table.data : null, problems: out.problems, remarks: remarks.problems };
};
