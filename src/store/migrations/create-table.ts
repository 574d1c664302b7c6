/** Writes a table down as data and has kysely's schema builder make it. Used by migrations only. */
import type { Kysely, RawBuilder } from "kysely";

/** The words in which SQL engines differ when a table is made. */
export interface EngineWords {
  readonly text: "text";
  /** 64-bit whole number. */
  readonly whole: "integer" | "bigint";
  /** 64-bit floating point. */
  readonly real: "real" | "double precision";
  /** What stands after the closing bracket, if anything: SQLite's `strict`. */
  readonly tableEnd: RawBuilder<unknown> | null;
}

/** A type with `?` may be null. */
type ColumnType = "text" | "text?" | "whole" | "whole?" | "real" | "real?";

export interface TablePlan {
  readonly name: string;
  readonly columns: Readonly<Record<string, ColumnType>>;
  readonly key: readonly string[];
  /** Foreign keys: own columns, the other table, its columns. */
  readonly references?: readonly (readonly [own: readonly string[], table: string, theirs: readonly string[]])[];
  readonly indexes?: readonly (readonly string[])[];
}

/** Makes the table and its indexes. */
export const createTable = async (db: Kysely<unknown>, words: EngineWords, plan: TablePlan): Promise<void> => {
  // kysely's builder wants names it has seen added; in a plan they are only known at run time.
  const names = (columns: readonly string[]): never[] => [...columns] as never[];
  let table = db.schema.createTable(plan.name);
  for (const [column, type] of Object.entries(plan.columns)) {
    const bare = type.replace("?", "") as "text" | "whole" | "real";
    table = table.addColumn(column, words[bare], (one) => (type.endsWith("?") ? one : one.notNull()));
  }
  table = table.addPrimaryKeyConstraint(`${plan.name}_key`, names(plan.key));
  for (const [own, other, theirs] of plan.references ?? []) {
    table = table.addForeignKeyConstraint(`${plan.name}_${own.join("_")}`, names(own), other, [...theirs]);
  }
  if (words.tableEnd !== null) table = table.modifyEnd(words.tableEnd);
  await table.execute();
  for (const columns of plan.indexes ?? []) {
    await db.schema
      .createIndex(`${plan.name}_by_${columns.join("_")}`)
      .on(plan.name)
      .columns([...columns])
      .execute();
  }
};
