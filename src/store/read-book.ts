/** Reads records out of rows. A row that fails its schema is set apart with its name; the others are read all the same. */
import type { BookContent, BookInfo, ReferenceTable, TableId } from "../engine/index.js";
import type { TableSummary } from "./book-store.js";
import type { RecordKind, RecordOf } from "./records/record-kinds.js";
import { RecordDamaged } from "./errors.js";
import type { StoredRow } from "./records/field.js";
import { bookShape, recordShapes } from "./records/record-shapes.js";
import type { Shape } from "./records/record-shapes.js";
import { fromRow } from "./records/rows.js";
import { rowsIn } from "./records/tables.js";
import type { BookDatabase } from "./records/tables.js";
import { tableMetaShape, tableParts } from "./records/table-shapes.js";

export interface ReadResult<R> {
  readonly records: readonly R[];
  readonly damaged: readonly RecordDamaged[];
}

const readRows = <R>(
  shape: Shape<R>,
  rows: readonly StoredRow[],
  name: (row: StoredRow) => { kind: RecordDamaged["kind"]; id: string },
): ReadResult<R> => {
  const records: R[] = [];
  const damaged: RecordDamaged[] = [];
  for (const row of rows) {
    const result = fromRow(shape, row, name(row));
    if (result.ok) records.push(result.value);
    else damaged.push(result.problem);
  }
  return { records, damaged };
};

/** How many rows of a kind there are; with `empty`, those that hold null in all of these fields. */
export const countRows = async <K extends RecordKind>(
  db: BookDatabase,
  kind: K,
  empty: readonly (keyof RecordOf[K])[],
): Promise<number> => {
  const shape: Shape<RecordOf[K]> = recordShapes[kind];
  let query = rowsIn(db)
    .selectFrom(shape.table)
    .select((eb) => eb.fn.countAll().as("count"));
  for (const field of empty) for (const column of shape.fields[field].columns) query = query.where(column, "is", null);
  return Number((await query.executeTakeFirstOrThrow())["count"]);
};

/** Records of one kind, in the order in which they were put. */
export const readAll = async <K extends RecordKind>(db: BookDatabase, kind: K): Promise<ReadResult<RecordOf[K]>> => {
  const shape: Shape<RecordOf[K]> = recordShapes[kind];
  const rows = await rowsIn(db).selectFrom(shape.table).selectAll().orderBy("position").orderBy("id").execute();
  return readRows(shape, rows, (row) => ({ kind, id: String(row["id"]) }));
};

/** @throws {RecordDamaged} if the row is no valid record */
export const readOne = async <K extends RecordKind>(db: BookDatabase, kind: K, id: string): Promise<RecordOf[K] | undefined> => {
  const shape: Shape<RecordOf[K]> = recordShapes[kind];
  const row = await rowsIn(db).selectFrom(shape.table).selectAll().where("id", "=", id).executeTakeFirst();
  if (row === undefined) return undefined;
  const result = fromRow(shape, row, { kind, id });
  if (!result.ok) throw result.problem;
  return result.value;
};

/** @throws {RecordDamaged} if the row of the book's own data is missing or invalid: no book can be shown without it */
export const readInfo = async (db: BookDatabase): Promise<BookInfo> => {
  const row = await rowsIn(db).selectFrom("book").selectAll().where("id", "=", 1).executeTakeFirst();
  if (row === undefined) throw new RecordDamaged({ kind: "book", id: "1", problem: "it is missing" });
  const result = fromRow(bookShape, row, { kind: "book", id: "1" });
  if (!result.ok) throw result.problem;
  return result.value;
};

/** How much each reference table holds. */
export const readTableSummaries = async (db: BookDatabase): Promise<readonly TableSummary[]> => {
  const counts = async (table: string): Promise<ReadonlyMap<string, number>> => {
    const rows = await rowsIn(db)
      .selectFrom(table)
      .select((eb) => ["table_id", eb.fn.countAll().as("count")])
      .groupBy("table_id")
      .execute();
    return new Map(rows.map((row) => [String(row["table_id"]), Number(row["count"])]));
  };
  const metas = await rowsIn(db).selectFrom("reference_table").selectAll().orderBy("position").execute();
  const [taxa, characters, scores] = [await counts("table_taxon"), await counts("table_character"), await counts("table_score")];
  return readRows(tableMetaShape, metas, (row) => ({ kind: "table", id: String(row["id"]) })).records.map((meta) => ({
    ...meta,
    taxonCount: taxa.get(meta.id) ?? 0,
    characterCount: characters.get(meta.id) ?? 0,
    scoreCount: scores.get(meta.id) ?? 0,
  }));
};

/** One reference table whole; parts that are damaged are left out and named. */
export const readTable = async (
  db: BookDatabase,
  id: TableId,
): Promise<{ readonly table: ReferenceTable | undefined; readonly damaged: readonly RecordDamaged[] }> => {
  const meta = await rowsIn(db).selectFrom("reference_table").selectAll().where("id", "=", id).executeTakeFirst();
  if (meta === undefined) return { table: undefined, damaged: [] };
  const head = fromRow(tableMetaShape, meta, { kind: "table", id });
  if (!head.ok) return { table: undefined, damaged: [head.problem] };
  const damaged: RecordDamaged[] = [];
  const part = async <R>(shape: Shape<R> & { readonly key: readonly string[] }): Promise<R[]> => {
    const rows = await rowsIn(db).selectFrom(shape.table).selectAll().where("table_id", "=", id).orderBy("position").execute();
    const read = readRows(shape, rows, (row) => ({
      kind: "table-part",
      id: [shape.table, ...shape.key.map((column) => String(row[column]))].join(" / "),
    }));
    damaged.push(...read.damaged);
    return [...read.records];
  };
  const table: ReferenceTable = {
    ...head.value,
    stages: await part(tableParts.stages),
    characters: await part(tableParts.characters),
    taxa: await part(tableParts.taxa),
    scores: await part(tableParts.scores),
    sources: await part(tableParts.sources),
    knownHybrids: await part(tableParts.knownHybrids),
  };
  return { table, damaged };
};

/** Everything. Call it on a transaction, so that all of it is of one moment. */
export const readContent = async (
  db: BookDatabase,
): Promise<{ readonly content: BookContent; readonly damaged: readonly RecordDamaged[]; readonly recordCount: number }> => {
  const damaged: RecordDamaged[] = [];
  let recordCount = 1;
  const all = async <K extends RecordKind>(kind: K): Promise<RecordOf[K][]> => {
    const read = await readAll(db, kind);
    damaged.push(...read.damaged);
    recordCount += read.records.length + read.damaged.length;
    return [...read.records];
  };
  const tables: ReferenceTable[] = [];
  const info = await readInfo(db);
  const ids = await rowsIn(db).selectFrom("reference_table").select("id").orderBy("position").execute();
  for (const { id } of ids) {
    const read = await readTable(db, id as TableId);
    damaged.push(...read.damaged);
    recordCount += 1 + read.damaged.length;
    if (read.table === undefined) continue;
    tables.push(read.table);
    const { stages, characters, taxa, scores, sources, knownHybrids } = read.table;
    for (const list of [stages, characters, taxa, scores, sources, knownHybrids]) recordCount += list.length;
  }
  const content: BookContent = {
    info,
    people: await all("person"),
    stages: await all("stage"),
    views: await all("view"),
    spots: await all("spot"),
    permissions: await all("permission"),
    tables,
    plants: await all("plant"),
    happenings: await all("happening"),
    outings: await all("outing"),
    stops: await all("stop"),
    stageRecords: await all("stageRecord"),
    looks: await all("look"),
    readings: await all("reading"),
    slips: await all("slip"),
    vouchers: await all("voucher"),
    photos: await all("photo"),
    accounts: await all("account"),
  };
  return { content, damaged, recordCount };
};
