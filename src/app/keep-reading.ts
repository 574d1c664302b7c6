/** Keeps a series of readings after asking about values that stand far off, above all by the factor of another unit. */
import { isDeepStrictEqual } from "node:util";
import type { ExpectedRange, Reading, ReferenceTable, SeriesQuestion } from "../engine/index.js";
import { questionsOfSeries } from "../engine/index.js";
import type { EditSummary } from "../store/index.js";
import { say } from "../words/index.js";
import type { OpenQuestion } from "./app-error.js";
import { Unanswered } from "./app-error.js";
import { tableOfPlant } from "./record-checks.js";
import type { Workbench } from "./workbench.js";
import { writeRecord } from "./write-record.js";

/** From the least to the greatest value that any taxon of the table may have; null when no taxon is scored. */
export const expectedInTable = (table: ReferenceTable, characterId: string): ExpectedRange | null => {
  const ranges = table.scores.flatMap(({ characterId: id, value }) => (id === characterId && value.kind === "range" ? [value] : []));
  if (ranges.length === 0) return null;
  return {
    low: Math.min(...ranges.map((range) => range.min ?? range.low)),
    high: Math.max(...ranges.map((range) => range.max ?? range.high)),
  };
};

const short = (value: number): string => String(Math.round(value * 100) / 100);

/** A question of the guard in words. */
export const wordQuestion = (question: SeriesQuestion, unit: string): OpenQuestion => {
  const code = question.kind;
  switch (question.kind) {
    case "another-unit":
      return {
        code,
        text: say("question.another-unit", {
          values: question.values.map(short).join(", "),
          unit,
          middle: short(question.middle),
          perhaps: question.perhapsUnit ?? "none",
          against: question.against,
        }),
      };
    case "far-from-series":
      return { code, text: say("question.far-from-series", { value: short(question.value), unit, middle: short(question.middle) }) };
    case "outside-table":
      return {
        code,
        text: say("question.outside-table", {
          values: question.values.map(short).join(", "),
          unit,
          low: short(question.expected.low),
          high: short(question.expected.high),
        }),
      };
    case "comma":
      return { code, text: say("question.comma", { written: question.written }) };
  }
};

/**
 * @param confirmed the person has seen the questions and says the values are right
 * @throws {Unanswered} with the questions when not confirmed; what `writeRecord` throws.
 */
export const keepReading = async (workbench: Workbench, id: string, reading: Reading, confirmed: boolean): Promise<EditSummary> => {
  const had = await workbench.store.get("reading", id);
  // Values that were accepted once are not asked about again when only the note beside them changes.
  if (!confirmed && reading.leaveOut === null && !isDeepStrictEqual(had?.values, reading.values)) {
    const table = await tableOfPlant(workbench.store, reading.plantId);
    const character = table?.characters.find((one) => one.id === reading.characterId);
    const unit = character?.answer.kind === "measure" ? character.answer.unit : "";
    if (table !== undefined && character !== undefined && unit === reading.unit) {
      const questions = questionsOfSeries(reading.values, unit, expectedInTable(table, reading.characterId));
      if (questions.length > 0)
        throw new Unanswered(
          say("question.detail", { character: character.name, count: questions.length }),
          say("question.remedy"),
          questions.map((question) => wordQuestion(question, unit)),
        );
    }
  }
  return writeRecord(workbench, "reading", id, reading);
};
