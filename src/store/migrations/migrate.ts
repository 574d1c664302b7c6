/**
 * Brings a database to the present schema: numbered steps, forward only, each in a transaction and recorded. A book
 * written by a newer version is refused before anything is touched.
 */
import type { Kysely } from "kysely";
import { MigrationFailed } from "../errors.js";
import type { Tables } from "../records/tables.js";
import { createTable } from "./create-table.js";
import type { EngineWords } from "./create-table.js";
import type { Migration } from "./migration.js";
import { first } from "./0001-first.js";

export const migrations: readonly Migration[] = [first];

/** The schema this version writes. */
export const presentSchema = (known: readonly Migration[] = migrations): number => known.at(-1)?.number ?? 0;

/** The number of the last step that was made; 0 when the database is empty. */
const schemaOf = async (db: Kysely<Tables>): Promise<number> => {
  const tables = await db.introspection.getTables();
  if (!tables.some((table) => table.name === "migration")) return 0;
  const last = await db
    .selectFrom("migration")
    .select((eb) => eb.fn.max("number").as("number"))
    .executeTakeFirst();
  return last?.number ?? 0;
};

/**
 * Makes the steps that are missing.
 * @param at instant to record, ISO 8601
 * @throws {MigrationFailed} if a step fails; that step is rolled back, those before it are kept
 */
export const migrate = async (
  db: Kysely<Tables>,
  { words, at, known = migrations }: { words: EngineWords; at: string; known?: readonly Migration[] },
): Promise<void> => {
  const present = await schemaOf(db);
  for (const step of known.filter((one) => one.number > present)) {
    try {
      await db.transaction().execute(async (transaction) => {
        // The steps know nothing of the present tables' types: they were written before them.
        const untyped = transaction as unknown as Kysely<unknown>;
        if (step.number === 1) {
          await createTable(untyped, words, {
            name: "migration",
            columns: { number: "whole", name: "text", applied_at: "text" },
            key: ["number"],
          });
        }
        await step.up(untyped, words);
        await transaction.insertInto("migration").values({ number: step.number, name: step.name, applied_at: at }).execute();
      });
    } catch (cause) {
      throw new MigrationFailed(step.name, { cause });
    }
  }
};
