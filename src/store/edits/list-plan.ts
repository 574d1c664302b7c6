/**
 * What must change so that a list of stored rows becomes another: by difference, and without renumbering rows whose
 * order stays. Positions have gaps, so that something put in the middle seldom moves what follows.
 */
import type { StoredRow } from "../records/field.js";
import { keyOf, sameRow } from "../records/rows.js";
import type { RowTable } from "../records/rows.js";

export interface RowChange {
  readonly table: string;
  readonly before: StoredRow | null;
  readonly after: StoredRow | null;
}

export const POSITION_GAP = 1024;

/** Ascending positions for `keys`; an old position is kept wherever it still ascends. */
export const placeInList = (old: ReadonlyMap<string, number>, keys: readonly string[]): readonly number[] => {
  const lastOld = keys.findLastIndex((key) => old.has(key));
  let previous = 0;
  return keys.map((key, index) => {
    const kept = old.get(key);
    previous = kept !== undefined && kept > previous ? kept : previous + (index < lastOld ? 1 : POSITION_GAP);
    return previous;
  });
};

/**
 * @param existing rows as stored
 * @param wanted rows to be there, in order, without their position; their keys differ
 * @returns puts in list order, and removals
 */
export const planList = (
  table: RowTable,
  existing: readonly StoredRow[],
  wanted: readonly StoredRow[],
): { readonly puts: readonly RowChange[]; readonly removals: readonly RowChange[] } => {
  const old = new Map(existing.map((row) => [keyOf(table, row), row]));
  const keys = wanted.map((row) => keyOf(table, row));
  const positions = placeInList(new Map(existing.map((row) => [keyOf(table, row), Number(row["position"])])), keys);
  const stay = new Set(keys);
  const puts = wanted.flatMap((row, index): RowChange[] => {
    const after = { ...row, position: positions[index] ?? 0 };
    const before = old.get(keys[index] ?? "") ?? null;
    return sameRow(table, before, after) ? [] : [{ table: table.table, before, after }];
  });
  const removals = existing
    .filter((row) => !stay.has(keyOf(table, row)))
    .map((before): RowChange => ({ table: table.table, before, after: null }));
  return { puts, removals };
};
