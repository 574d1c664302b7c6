/** Two to six taxa side by side, what differs first. */
import {
  compareParts,
  difference,
  maySpeakAgainst,
  scoreLookup,
  tableId as tableIdSchema,
  type Character,
  type ReferenceTable,
  type ScoreValue,
  type TaxonId,
} from "../engine/index.js";
import type { ApartView } from "../contract/index.js";
import { say, spansText } from "../words/index.js";
import { NotInBook, Refused } from "./app-error.js";
import { scoreText, tableWords } from "./case-words.js";
import type { Workbench } from "./workbench.js";

type Difference = ApartView["rows"][number]["difference"];
const order: readonly Difference[] = ["sure", "usual", "none", "silent"];

const pairsOf = <T>(items: readonly T[]): readonly (readonly [T, T])[] =>
  items.flatMap((a, i) => items.slice(i + 1).map((b) => [a, b] as const));

/** A row differs surely when it surely separates every pair; usually when it separates every pair at least usually. */
const joint = (values: readonly ScoreValue[]): Difference => {
  const each = pairsOf(values).map(([a, b]) => difference(a, b));
  if (each.every((how) => how === "silent")) return "silent";
  if (each.every((how) => how === "sure")) return "sure";
  return each.some((how) => how === "sure" || how === "usual") ? "usual" : "none";
};

/**
 * Taxa of a table side by side.
 * @param asked taxon ids
 * @throws {Refused} fewer than two or more than six taxa, or one the table does not have
 */
export const taxaApart = (table: ReferenceTable, asked: readonly string[]): ApartView => {
  const found: TaxonId[] = asked.flatMap((text) => table.taxa.find((taxon) => taxon.id === text)?.id ?? []);
  const missing = asked.filter((text) => !found.some((taxonId) => taxonId === text));
  if (missing.length > 0 || found.length < 2 || found.length > 6) {
    const detail =
      missing.length > 0 ? say("refused.apart-unknown", { taxa: missing.join(", ") }) : say("refused.apart-count", { count: found.length });
    throw new Refused({ code: "taxa-not-comparable", detail, remedy: say("refused.apart-remedy") }, [
      { pointer: "/taxa", value: asked.join(",").slice(0, 80), detail },
    ]);
  }
  const scores = scoreLookup(table);
  const words = tableWords(table);
  const row = (character: Character): ApartView["rows"][number] => {
    const values = found.map((taxonId) => scores(taxonId, character.id));
    return {
      characterId: character.id,
      part: character.part,
      name: character.name,
      tool: character.tool,
      difference: joint(values),
      cells: values.map((value) => ({
        text: scoreText(words, character.id, value),
        range:
          value.kind === "range" ? { min: value.min ?? value.low, low: value.low, high: value.high, max: value.max ?? value.high } : null,
      })),
      unit: character.answer.kind === "measure" ? character.answer.unit : "",
      seenIn: character.seenIn,
    };
  };
  const rows = table.characters
    .filter((character) => character.role !== "hybrid-check")
    .map(row)
    .toSorted((a, b) => order.indexOf(a.difference) - order.indexOf(b.difference) || compareParts(a.part, b.part));
  return {
    taxa: found.map(words.taxonName),
    rows,
    notSeparated: pairsOf(found).flatMap(([a, b]) => {
      const separated = table.characters.filter(maySpeakAgainst).some((c) => difference(scores(a, c.id), scores(b, c.id)) === "sure");
      return separated
        ? []
        : [{ a, b, sentence: say("apart.not-separated", { a: spansText(words.shortTaxon(a)), b: spansText(words.shortTaxon(b)) }) }];
    }),
  };
};

/** @throws {NotInBook} the table; @throws {Refused} as {@link taxaApart} */
export const apartView = async (workbench: Workbench, tableId: string, taxa: string): Promise<ApartView> => {
  const id = tableIdSchema.safeParse(tableId);
  const table = id.success ? await workbench.store.table(id.data) : undefined;
  if (table === undefined) throw new NotInBook("table", tableId, say("refused.not-in-book", { kind: say("kind.table"), id: tableId }));
  return taxaApart(
    table,
    [...new Set(taxa.split(",").map((text) => text.trim()))].filter((text) => text !== ""),
  );
};
