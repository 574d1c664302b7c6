/** What may be done inside an edit, on its transaction. Every row that changes is remembered for the log. */
import type { BookContent, ReferenceTable, TableId } from "../engine/index.js";
import { bookContent, referenceTable } from "../engine/index.js";
import type { z } from "zod";
import type { Edit } from "./book-store.js";
import type { RecordKind, RecordOf } from "./records/record-kinds.js";
import { applyChanges } from "./edits/apply-changes.js";
import { POSITION_GAP, planList } from "./edits/list-plan.js";
import type { RowChange } from "./edits/list-plan.js";
import { DanglingReference, RecordInvalid } from "./errors.js";
import type { StoredKind } from "./errors.js";
import { readOne, readAll } from "./read-book.js";
import type { StoredRow } from "./records/field.js";
import { bookShape, contentKey, dependencyOrder, recordShapes } from "./records/record-shapes.js";
import type { Shape } from "./records/record-shapes.js";
import { checkNotInUse, checkReferences, danglingIn } from "./records/references.js";
import { keyOf, rowTableNamed, sameRow, toRow } from "./records/rows.js";
import { rowsIn } from "./records/tables.js";
import type { BookDatabase } from "./records/tables.js";
import { partOrderOfTable, tableMetaShape, tableParts } from "./records/table-shapes.js";

/** Carries out the deeds of one edit. They must be called one after another: the store sees to that. */
export interface BookEdit extends Edit {
  /** Makes the book hold exactly this content. */
  putContent(content: BookContent): Promise<void>;
  readonly changes: readonly RowChange[];
}

const checkedWhole = <T>(schema: z.ZodType<T>, value: unknown, kind: StoredKind, id: string): T => {
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  const issue = result.error.issues[0];
  throw new RecordInvalid({
    kind,
    id,
    where: issue === undefined ? "" : issue.path.map(String).join("."),
    problem: issue?.message ?? "it does not fit its schema",
    cause: result.error,
  });
};

const shapeOf = (kind: RecordKind): Shape<unknown> => recordShapes[kind] as Shape<unknown>;

const checkUnique = (kind: StoredKind, id: string, table: string, rows: readonly StoredRow[]): void => {
  const seen = new Set<string>();
  for (const row of rows) {
    const key = keyOf(rowTableNamed(table), row);
    if (seen.has(key)) throw new RecordInvalid({ kind, id, where: table, problem: `"${key}" occurs twice` });
    seen.add(key);
  }
};

/** The rows of a table's parts, list by list, checked against each other. */
const partRows = (table: ReferenceTable): ReadonlyMap<string, readonly StoredRow[]> => {
  const ids = {
    taxa: new Set<string>(table.taxa.map((one) => one.id)),
    characters: new Set<string>(table.characters.map((one) => one.id)),
    sources: new Set<string>(table.sources.map((one) => one.id)),
  };
  const need = (known: ReadonlySet<string>, kind: string, id: string | null, field: string): void => {
    if (id !== null && !known.has(id)) throw new DanglingReference({ kind: "table", id: table.id, field, missing: { kind, id } });
  };
  for (const score of table.scores) {
    need(ids.taxa, "taxon", score.taxonId, "scores.taxonId");
    need(ids.characters, "character", score.characterId, "scores.characterId");
    need(ids.sources, "source", score.sourceId, "scores.sourceId");
  }
  for (const hybrid of table.knownHybrids) for (const parent of hybrid.parents) need(ids.taxa, "taxon", parent, "knownHybrids.parents");
  return new Map(
    partOrderOfTable.map((name) => {
      const part = tableParts[name] as unknown as Shape<unknown>;
      const rows = (table[name] as readonly unknown[]).map((record): StoredRow => ({
        table_id: table.id,
        ...toRow(part, record, { kind: "table-part", id: `${table.id} / ${name}` }),
      }));
      checkUnique("table", table.id, part.table, rows);
      return [part.table, rows];
    }),
  );
};

const partTables = partOrderOfTable.map((name) => tableParts[name].table);

export const bookEdit = (db: BookDatabase): BookEdit => {
  const changes: RowChange[] = [];
  /** References found to be there, so that 200 photographs of one outing ask for it once. */
  const known = new Set<string>();

  const carryOut = async (some: readonly RowChange[]): Promise<void> => {
    await applyChanges(db, some);
    for (const change of some) changes.push(change);
  };
  const stored = async (table: string, id: string | number): Promise<StoredRow | null> =>
    (await rowsIn(db).selectFrom(table).selectAll().where("id", "=", id).executeTakeFirst()) ?? null;
  const putRow = async (table: string, row: StoredRow, placed: boolean): Promise<void> => {
    const before = await stored(table, row["id"] ?? "");
    let after = row;
    if (placed) {
      const last = async (): Promise<number> => {
        const found = await rowsIn(db)
          .selectFrom(table)
          .select((eb) => eb.fn.max("position").as("position"))
          .executeTakeFirst();
        return Number(found?.position ?? 0);
      };
      after = { ...row, position: before === null ? (await last()) + POSITION_GAP : (before["position"] ?? 0) };
    }
    if (!sameRow(rowTableNamed(table), before, after)) await carryOut([{ table, before, after }]);
  };
  const partsOf = (table: string, id: string): Promise<StoredRow[]> =>
    rowsIn(db).selectFrom(table).selectAll().where("table_id", "=", id).orderBy("position").execute();

  const planParts = async (table: ReferenceTable): Promise<{ puts: RowChange[]; removals: RowChange[] }> => {
    const puts: RowChange[] = [];
    const removals: RowChange[] = [];
    for (const [name, rows] of partRows(table)) {
      const plan = planList(rowTableNamed(name), await partsOf(name, table.id), rows);
      for (const change of plan.puts) puts.push(change);
      for (const change of plan.removals) removals.push(change);
    }
    return { puts, removals: removals.toReversed() };
  };
  const removalOfParts = async (id: string): Promise<RowChange[]> => {
    const removals: RowChange[] = [];
    for (const table of partTables.toReversed()) {
      for (const before of await partsOf(table, id)) removals.push({ table, before, after: null });
    }
    return removals;
  };
  const metaRow = (table: ReferenceTable): StoredRow =>
    toRow(tableMetaShape, { id: table.id, title: table.title, notice: table.notice }, { kind: "table", id: table.id });

  return {
    changes,
    get: async (kind, id) => readOne(db, kind, id),
    list: async (kind) => (await readAll(db, kind)).records,
    put: async <K extends RecordKind>(kind: K, record: RecordOf[K]) => {
      const row = toRow(shapeOf(kind), record, { kind, id: String(record.id) });
      await checkReferences(db, kind, [row], known);
      await putRow(shapeOf(kind).table, row, true);
    },
    remove: async (kind, id) => {
      const { table } = shapeOf(kind);
      const before = await stored(table, id);
      if (before === null) return;
      await checkNotInUse(db, kind, [id]);
      known.delete(`${kind} ${id}`);
      await carryOut([{ table, before, after: null }]);
    },
    putInfo: async (info) => {
      await putRow("book", { id: 1, ...toRow(bookShape, info, { kind: "book", id: "1" }) }, false);
    },
    putTable: async (input) => {
      const table = checkedWhole(referenceTable, input, "table", String(input.id));
      await putRow("reference_table", metaRow(table), true);
      const { puts, removals } = await planParts(table);
      await carryOut(puts);
      await carryOut(removals);
    },
    removeTable: async (id: TableId) => {
      const before = await stored("reference_table", id);
      if (before === null) return;
      await checkNotInUse(db, "table", [id]);
      known.delete(`table ${id}`);
      await carryOut([...(await removalOfParts(id)), { table: "reference_table", before, after: null }]);
    },
    putContent: async (input) => {
      const content = checkedWhole(bookContent, input, "book", "1");
      const dangling = danglingIn(content)[0];
      if (dangling !== undefined) throw dangling;
      known.clear();
      await putRow("book", { id: 1, ...toRow(bookShape, content.info, { kind: "book", id: "1" }) }, false);
      const removals: RowChange[] = [];
      for (const kind of dependencyOrder) {
        const table = kind === "table" ? "reference_table" : shapeOf(kind).table;
        const rows =
          kind === "table"
            ? content.tables.map(metaRow)
            : content[contentKey[kind]].map((record) => toRow(shapeOf(kind), record, { kind, id: record.id }));
        checkUnique(kind, "of the content", table, rows);
        const existing = await rowsIn(db).selectFrom(table).selectAll().orderBy("position").execute();
        const plan = planList(rowTableNamed(table), existing, rows);
        await carryOut(plan.puts);
        if (kind === "table") {
          for (const change of plan.removals) {
            removals.push(change);
            for (const part of (await removalOfParts(String(change.before?.["id"]))).toReversed()) removals.push(part);
          }
          for (const one of content.tables) {
            const parts = await planParts(one);
            await carryOut(parts.puts);
            await carryOut(parts.removals);
          }
        } else {
          for (const change of plan.removals) removals.push(change);
        }
      }
      // From the last dependent backwards: by now nothing that stays refers to what goes.
      await carryOut(removals.toReversed());
    },
  };
};
