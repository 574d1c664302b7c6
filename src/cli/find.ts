/** Finds what a person names on the command line, by id or by name; what is not found is said with what there is. */
import type { Workbench } from "../app/index.js";
import { isoDate } from "../engine/index.js";
import type { Character, FollowedPlant, IsoDate, Outing, ReferenceTable, Taxon } from "../engine/index.js";
import type { Word } from "../words/index.js";
import { say } from "../words/index.js";
import { UsageError } from "./terminal.js";

const same = (a: string, b: string): boolean => a.toLocaleLowerCase("en") === b.toLocaleLowerCase("en");

/** The one item a text names, first by id, then by any of its names. */
const find = <T extends { readonly id: string }>(
  items: readonly T[],
  text: string,
  names: (item: T) => readonly string[],
  missing: (has: string) => string,
): T => {
  const found = items.find((item) => item.id === text) ?? items.find((item) => names(item).some((name) => same(name, text)));
  if (found === undefined)
    throw new UsageError(
      missing(
        items
          .slice(0, 30)
          .map((item) => item.id)
          .join(", ") || "—",
      ),
    );
  return found;
};

/** @throws {UsageError} */
export const findPlant = async ({ store }: Workbench, text: string): Promise<FollowedPlant> =>
  find(
    await store.list("plant"),
    text,
    (plant) => [plant.nick],
    (has) => say("usage.plant", { text, has }),
  );

/** An outing by id or date; the newest when nothing is said. @throws {UsageError} */
export const findOuting = async ({ store }: Workbench, text: string | undefined): Promise<Outing> => {
  const outings = (await store.list("outing")).toSorted((a, b) => (a.date < b.date ? 1 : -1));
  const newest = outings[0];
  if (text === undefined && newest !== undefined) return newest;
  return find(
    outings,
    text ?? "",
    (outing) => [outing.date],
    (has) => say("usage.outing", { text: text ?? "", has }),
  );
};

/** A table by id or title; the only one when nothing is said. @throws {UsageError} */
export const findTable = async ({ store }: Workbench, text: string | undefined): Promise<ReferenceTable> => {
  const tables = await store.tables();
  const only = tables.length === 1 && text === undefined ? tables[0] : undefined;
  const summary =
    only ??
    find(
      tables,
      text ?? "",
      (table) => [table.title],
      (has) => say("usage.table", { text: text ?? "", has }),
    );
  const table = await store.table(summary.id);
  if (table === undefined) throw new UsageError(say("usage.table", { text: text ?? "", has: "—" }));
  return table;
};

/** @throws {UsageError} */
export const findCharacter = (table: ReferenceTable, text: string): Character =>
  find(
    table.characters,
    text,
    (one) => [one.name],
    (has) => say("usage.character", { table: table.title, text, has }),
  );

/** @throws {UsageError} */
export const findTaxon = (table: ReferenceTable, text: string): Taxon =>
  find(
    table.taxa,
    text,
    (one) => [one.name, ...one.synonyms, ...Object.values(one.vernacular)],
    (has) => say("usage.taxon", { table: table.title, text, has }),
  );

/** A date as typed. @throws {UsageError} */
export const readDate = (text: string): IsoDate => {
  const parsed = isoDate.safeParse(text);
  if (!parsed.success) throw new UsageError(say("usage.date", { text }));
  return parsed.data;
};

/** A whole number within limits. @throws {UsageError} */
export const readWhole = (text: string, low: number, high: number, word: Word = "usage.number"): number => {
  const value = Number(text);
  if (!/^-?\d+$/.test(text) || value < low || value > high) throw new UsageError(say(word, { text, low, high }));
  return value;
};

/** One of a closed list. @throws {UsageError} */
export const readChoice = <const T extends string>(text: string, choices: readonly T[]): T => {
  const found = choices.find((choice) => choice === text);
  if (found === undefined) throw new UsageError(say("usage.choice", { text, has: choices.join(", ") }));
  return found;
};
