/** The questions of a series of readings in words. */
import type { ReferenceTable, SeriesQuestion, ExpectedRange, CharacterId } from "../../../engine/index.js";
import { say } from "../../../words/index.js";

const short = (value: number): string => String(Math.round(value * 100) / 100);

/** One question as a sentence: "5.1 mm among values near 50: centimetres?" */
export const questionInWords = (question: SeriesQuestion, unit: string): string => {
  switch (question.kind) {
    case "another-unit":
      if (question.perhapsUnit === null)
        return say("outing.ask.far", { value: question.values.map(short).join(", "), unit, middle: short(question.middle) });
      return say("outing.ask.unit", {
        values: question.values.map(short).join(", "),
        unit,
        middle: short(question.middle),
        other: question.perhapsUnit,
        against: question.against,
      });
    case "far-from-series":
      return say("outing.ask.far", { value: short(question.value), unit, middle: short(question.middle) });
    case "outside-table":
      return say("outing.ask.table", {
        values: question.values.map(short).join(", "),
        unit,
        low: short(question.expected.low),
        high: short(question.expected.high),
      });
    case "comma":
      return say("outing.ask.comma", { written: question.written });
  }
};

/** From the smallest to the largest value any taxon of the table may have; null when the table says nothing. */
export const expectedOf = (table: ReferenceTable, characterId: CharacterId): ExpectedRange | null => {
  const ranges = table.scores.flatMap(({ characterId: id, value }) => (id === characterId && value.kind === "range" ? [value] : []));
  if (ranges.length === 0) return null;
  return { low: Math.min(...ranges.map((r) => r.min ?? r.low)), high: Math.max(...ranges.map((r) => r.max ?? r.high)) };
};
