/** How looks and readings are said in a line. */
import type { Look, Reading, ReferenceTable } from "../../../engine/index.js";
import { say } from "../../../words/index.js";

/** Names of states of a table's character; the bare id where the table does not know it. */
export const stateNames = (table: ReferenceTable | undefined, characterId: string, states: readonly string[]): readonly string[] => {
  const answer = table?.characters.find((character) => character.id === characterId)?.answer;
  const known = answer?.kind === "states" ? answer.states : [];
  return states.map((id) => known.find((state) => state.id === id)?.name ?? id);
};

/** What a look says: "four", "looked, not there (none in 5)", "could not tell". */
export const lookSays = (look: Look, table: ReferenceTable | undefined): string => {
  if (look.status === "seen") {
    const names = new Intl.ListFormat("en", { type: look.sure === "between-two" ? "disjunction" : "conjunction" });
    return names.format(stateNames(table, look.characterId, look.states));
  }
  if (look.status === "not-there" && look.n !== null) return say("web.look.none-in", { n: look.n });
  return say(`web.look.${look.status}`);
};

/** How it was looked at: "×20, 5 looked at, fairly sure, by T.M.W." */
export const lookHow = (look: Look): string =>
  [
    look.lens === null ? say("web.look.eye") : look.lens.replace(/^x(?=\d)/, "×"),
    look.n === null || look.status === "not-there" ? "" : say("web.look.n", { n: look.n }),
    look.sure === "sure" || look.status !== "seen" ? "" : say(`web.look.sure.${look.sure}`),
    look.by,
  ]
    .filter((part) => part !== "")
    .join(", ");

/** Middle of the values: mean of the two middle ones when their number is even. */
export const middleOf = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const low = sorted[Math.floor((sorted.length - 1) / 2)];
  const high = sorted[Math.ceil((sorted.length - 1) / 2)];
  if (low === undefined || high === undefined) throw new RangeError("a series of readings without a value has no middle");
  return (low + high) / 2;
};

const number = new Intl.NumberFormat("en-GB", { maximumFractionDigits: 2 });

/** "43–56 mm, middle 50.5, n = 12" */
export const readingSays = (reading: Reading): string => {
  const [low, high] = [Math.min(...reading.values), Math.max(...reading.values)];
  return say("web.reading.says", {
    range: low === high ? number.format(low) : `${number.format(low)}–${number.format(high)}`,
    unit: reading.unit,
    middle: number.format(middleOf(reading.values)),
    n: reading.values.length,
  });
};

/** "ruler, 6 stems, ±0.5 mm, by T.M.W." */
export const readingHow = (reading: Reading): string =>
  [
    reading.method,
    reading.stems === null ? "" : say("web.reading.stems", { count: reading.stems }),
    reading.plusMinus === null ? "" : `±${number.format(reading.plusMinus)} ${reading.unit}`,
    reading.by,
  ]
    .filter((part) => part !== "")
    .join(", ");
