/** Writes a reference table as CSV in our documented layout; reading it back gives the same table. */
import { stringify } from "csv-stringify/browser/esm/sync";
import type { Character } from "../../characters/character.js";
import type { ReferenceTable, Score, Taxon } from "../../characters/reference-table.js";
import { writeCell } from "./cell.js";
import { characterRows, guardText, joinList, taxonColumns, type CharacterRow, type TaxonColumn } from "./layout.js";

const describe = (row: CharacterRow, { answer, ...c }: Character): string => {
  switch (row) {
    case "#name":
      return c.name;
    case "#part":
      return c.part;
    case "#kind":
      if (answer.kind === "states") return answer.ordered ? "ordered states" : "states";
      return answer.kind === "ratio" ? `ratio ${answer.numerator} / ${answer.denominator}` : answer.kind;
    case "#unit":
      return answer.kind === "measure" ? answer.unit : "";
    case "#states":
      return answer.kind === "states"
        ? joinList(answer.states.map((s) => [s.id, s.name, s.plain].map((t) => t.replaceAll("~", "\\~")).join(" ~ ")))
        : "";
    case "#absence":
      return answer.kind === "states" ? (answer.absence ?? "") : "";
    case "#min n":
      return answer.kind === "states" ? "" : String(answer.minN);
    case "#seen in":
      return joinList(c.seenIn);
    case "#tool":
      return c.tool;
    case "#weight":
      return String(c.weight);
    case "#group":
      return c.group;
    case "#only if":
      return c.onlyIf === null ? "" : `${c.onlyIf.character}: ${joinList(c.onlyIf.states)}`;
    case "#role":
      return c.role;
    case "#errors":
      return joinList(c.errors);
    case "#disturbs":
      return c.disturbs ? "yes" : "no";
    case "#misreading":
      return c.misreading === null ? "" : String(c.misreading);
    case "#note":
      return c.note;
  }
};

const taxonCell = (column: TaxonColumn, taxon: Taxon, source: string): string => {
  switch (column) {
    case "taxon":
      return taxon.id;
    case "name":
      return taxon.name;
    case "authorship":
      return taxon.authorship;
    case "family":
      return taxon.family;
    case "rank":
      return taxon.rank;
    case "synonyms":
      return joinList(taxon.synonyms);
    case "status":
      return taxon.status;
    case "flower months":
      return taxon.flowerMonths;
    case "band":
      return taxon.band;
    case "in one line":
      return taxon.inOneLine;
    case "expected":
      return taxon.expectedInCounty ? "yes" : "no";
    case "cautions":
      return joinList(taxon.cautions);
    case "source":
      return source;
  }
};

/** The source that most scores of a taxon have: written once in its row. */
const mainSource = (scores: readonly Score[]): string => {
  const counts = new Map<string, number>();
  for (const score of scores) counts.set(score.sourceId ?? "", (counts.get(score.sourceId ?? "") ?? 0) + 1);
  return [...counts].toSorted((a, b) => b[1] - a[1])[0]?.[0] ?? "";
};

/** @returns CSV with CRLF line ends and a header (RFC 4180) */
export const writeTableCsv = (table: ReferenceTable): string => {
  const languages = [...new Set(table.taxa.flatMap((taxon) => Object.keys(taxon.vernacular)))].toSorted();
  const lead = taxonColumns.length + languages.length;
  const rows: string[][] = [
    [...taxonColumns, ...languages.map((language) => `vernacular ${language}`), ...table.characters.map((character) => character.id)],
    ["#title", table.title],
    ...(table.notice === "" ? [] : [["#notice", table.notice]]),
    ...table.stages.map((stage) => ["#stage", stage.id, stage.name, joinList(stage.bbch), stage.looksLike, stage.usualMonths]),
    ...table.sources.map((source) => ["#source", source.id, source.citation, source.licence]),
    ...table.knownHybrids.map(({ parents, note }) => ["#hybrid", parents[0], parents[1], note]),
    ...characterRows.map((row) => [row, ...Array.from({ length: lead - 1 }, () => ""), ...table.characters.map((c) => describe(row, c))]),
  ];
  const extra: string[][] = [];
  for (const taxon of table.taxa) {
    const own = table.scores.filter((score) => score.taxonId === taxon.id);
    const source = mainSource(own);
    const cells = table.characters.map((character) => {
      const [first, ...others] = own.filter((score) => score.characterId === character.id);
      // What a cell cannot hold (a second source, page and words, an explicit "unknown") gets a row of its own.
      const plain =
        first !== undefined &&
        (first.sourceId ?? "") === source &&
        first.page === "" &&
        first.words === "" &&
        first.value.kind !== "unknown";
      for (const score of plain ? others : first === undefined ? [] : [first, ...others]) {
        extra.push(["#score", taxon.id, character.id, writeCell(score.value) || "?", score.sourceId ?? "", score.page, score.words]);
      }
      return plain ? writeCell(first.value) : "";
    });
    rows.push([
      ...taxonColumns.map((column) => taxonCell(column, taxon, source)),
      ...languages.map((l) => taxon.vernacular[l] ?? ""),
      ...cells,
    ]);
  }
  return stringify(
    [...rows, ...extra].map((row) => row.map(guardText)),
    { record_delimiter: "\r\n" },
  );
};
