/**
 * What the keys of the sorting trays mean. Four rows of choices: plant, view, stage, part. One row lies under the digits
 * at a time; its letter brings it there, and from then on one digit does the whole thing to every chosen sheet, which
 * is what an evening with two hundred photographs needs: bring "view" under the digits once, then walk through the sheets
 * with one digit and Enter. A row with more than ten choices turns its page when its letter is pressed again; "/" finds a
 * choice by typing.
 */
import type { SheetChange } from "../../../contract/index.js";

export const rowKinds = ["plant", "view", "stage", "part"] as const;
export type RowKind = (typeof rowKinds)[number];

/** The letter that brings a row under the digits. */
export const letterOf: Readonly<Record<RowKind, string>> = { plant: "p", view: "v", stage: "s", part: "a" };

export interface Choice {
  /** What is written: an id, or the part's name. */
  readonly value: string;
  readonly label: string;
}
export type Rows = Readonly<Record<RowKind, readonly Choice[]>>;

/** Which row lies under the digits, and which ten of it. */
export interface UnderDigits {
  readonly row: RowKind;
  readonly page: number;
}

export const perPage = 10;

/** The digit of a place in the page: 1 to 9, then 0. */
export const digitOf = (place: number): string => String((place + 1) % 10);

/** The ten that lie under the digits now. */
export const choicesUnder = (rows: Rows, under: UnderDigits): readonly Choice[] =>
  rows[under.row].slice(under.page * perPage, (under.page + 1) * perPage);

export type KeyMeaning =
  | { readonly kind: "say"; readonly row: RowKind; readonly choice: Choice }
  | { readonly kind: "turn"; readonly under: UnderDigits }
  | { readonly kind: "find" }
  | { readonly kind: "repeat" }
  | { readonly kind: "next" }
  | { readonly kind: "undo" }
  | { readonly kind: "leave-out" }
  | { readonly kind: "large" };

/** What a key means; undefined = nothing, so the page may have it. */
export const meaningOf = (key: string, rows: Rows, under: UnderDigits): KeyMeaning | undefined => {
  if (/^\d$/.test(key)) {
    const choice = choicesUnder(rows, under)[(Number(key) + 9) % 10];
    return choice === undefined ? undefined : { kind: "say", row: under.row, choice };
  }
  const small = key.toLowerCase();
  const row = rowKinds.find((kind) => letterOf[kind] === small);
  if (row !== undefined) {
    const pages = Math.max(1, Math.ceil(rows[row].length / perPage));
    return { kind: "turn", under: { row, page: row === under.row ? (under.page + 1) % pages : 0 } };
  }
  switch (small) {
    case "/":
      return { kind: "find" };
    case ".":
      return { kind: "repeat" };
    case "enter":
      return { kind: "next" };
    case "u":
      return { kind: "undo" };
    case "x":
      return { kind: "leave-out" };
    case " ":
      return { kind: "large" };
    default:
      return undefined;
  }
};

/** What a choice changes on a sheet; the empty value clears. */
export const changeFor = (row: RowKind, value: string): SheetChange => {
  switch (row) {
    case "plant":
      return { plantId: value === "" ? null : (value as NonNullable<SheetChange["plantId"]>) };
    case "view":
      return { viewId: value === "" ? null : (value as NonNullable<SheetChange["viewId"]>) };
    case "stage":
      return { stageId: value === "" ? null : (value as NonNullable<SheetChange["stageId"]>) };
    case "part":
      return { part: value };
  }
};
