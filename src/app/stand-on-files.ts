/** Determination on plain files, without a book: a table as CSV, specimens as CSV, the case of each. */
import {
  buildCase,
  caseByRule,
  prepareTable,
  readLooksCsv,
  readTableCsv,
  settledRule,
  type CaseFile,
  type Problem,
  type ReferenceTable,
  type ResultWord,
  type Tool,
} from "../engine/index.js";
import { spansText } from "../words/index.js";
import { standingOf } from "./case-words.js";

export interface FileStanding {
  readonly specimen: string;
  readonly word: ResultWord;
  readonly taxonIds: readonly string[];
  readonly headline: string;
  readonly explanation: string;
  readonly noneOfThese: number;
  readonly probabilities: readonly { readonly taxonId: string; readonly probability: number }[];
  readonly leastWrong: number | null;
  readonly wouldHaveToBeWrong: readonly string[];
  readonly disagreement: CaseFile["disagreement"];
  readonly nextChecks: readonly {
    readonly characterId: string;
    readonly pairs: number;
    readonly score: number;
    readonly bits: number | null;
    readonly tool: Tool;
  }[];
}

export interface StandReport {
  readonly table: string;
  readonly notice: string;
  readonly specimens: readonly FileStanding[];
  readonly problems: readonly Problem[];
}

/** A table from CSV text; null with the problems when it cannot be read. */
export const tableFromCsv = (csv: string): { readonly table: ReferenceTable | null; readonly problems: readonly Problem[] } =>
  readTableCsv(csv, { id: "table", title: "", stages: [] });

/** The case of every specimen of a looks file. Specimens with a problem are named and left out; the rest go on. */
export const standOnFiles = (tableCsv: string, looksCsv: string): StandReport => {
  const { table, problems } = tableFromCsv(tableCsv);
  if (table === null)
    return {
      table: "",
      notice: "",
      specimens: [],
      problems: problems.map((problem) => ({ ...problem, where: `table: ${problem.where}` })),
    };
  const read = readLooksCsv(looksCsv, table);
  const prepared = prepareTable(table);
  const rule = settledRule.parse({});
  const specimens = read.specimens.map((specimen): FileStanding => {
    const input = { table, evidence: specimen, rivalIds: [], happenings: [], rule, upTo: null };
    const file = buildCase(input, {}, prepared);
    const standing = standingOf(table, caseByRule(input), file.nextChecks);
    return {
      specimen: specimen.name,
      word: file.word,
      taxonIds: file.taxonIds,
      headline: spansText(standing.headline),
      explanation: standing.explanation,
      noneOfThese: file.noneOfThese,
      probabilities: file.rivals.map(({ taxonId, probability }) => ({ taxonId, probability })),
      leastWrong: file.robustness.leastWrong,
      wouldHaveToBeWrong: file.robustness.characterIds,
      disagreement: file.disagreement,
      nextChecks: file.nextChecks
        .slice(0, 10)
        .map(({ characterId, pairs, score, bits, tool }) => ({ characterId, pairs, score, bits, tool })),
    };
  });
  return {
    table: table.title,
    notice: table.notice,
    specimens,
    problems: read.problems.map((problem) => ({ ...problem, where: `looks: ${problem.where}` })),
  };
};
