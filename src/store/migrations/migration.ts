/** One step of the schema. */
import type { Kysely } from "kysely";
import type { EngineWords } from "./create-table.js";

export interface Migration {
  /** 1, 2, 3, ... without gaps. */
  readonly number: number;
  readonly name: string;
  up(db: Kysely<unknown>, words: EngineWords): Promise<void>;
}
