/**
 * Who refers to whom. The database's foreign keys are the net below; these checks come first, because they can name the
 * record and cover the small lists of ids that are kept as JSON text.
 */
import type { BookContent } from "../../engine/index.js";
import type { RecordKind } from "./record-kinds.js";
import { DanglingReference, RecordInUse } from "../errors.js";
import type { Field, ReferenceTarget, StoredRow } from "./field.js";
import { contentKey, recordKinds, recordShapes } from "./record-shapes.js";
import { rowsIn } from "./tables.js";
import type { BookDatabase } from "./tables.js";

interface Reference {
  readonly kind: RecordKind;
  readonly table: string;
  readonly field: string;
  readonly column: string;
  readonly list: boolean;
  readonly target: ReferenceTarget;
}

/** Every reference between records, read off the field maps. */
const allReferences: readonly Reference[] = recordKinds.flatMap((kind) =>
  Object.entries(recordShapes[kind].fields as Readonly<Record<string, Field<unknown>>>).flatMap(([field, { columns, refersTo }]) =>
    refersTo === undefined
      ? []
      : [{ kind, table: recordShapes[kind].table, field, column: columns[0] ?? "", list: refersTo.list, target: refersTo.kind }],
  ),
);

const tableOfTarget = (target: ReferenceTarget): string => (target === "table" ? "reference_table" : recordShapes[target].table);

/** The ids a column refers to. A damaged list refers to nothing: reading the record reports it. */
const idsIn = (reference: Reference, row: StoredRow): readonly string[] => {
  const stored = row[reference.column];
  if (typeof stored !== "string") return [];
  if (!reference.list) return [stored];
  try {
    const list = JSON.parse(stored) as unknown;
    return Array.isArray(list) ? list.filter((id): id is string => typeof id === "string") : [];
  } catch {
    return [];
  }
};

const CHUNK = 400;

/**
 * @param rows rows of one kind that are to be put
 * @param known ids found before in this edit, `target id`; what is found is added
 * @throws {DanglingReference} if one of them refers to something that is not there
 */
export const checkReferences = async (
  db: BookDatabase,
  kind: RecordKind,
  rows: readonly StoredRow[],
  known: Set<string>,
): Promise<void> => {
  for (const reference of allReferences.filter((one) => one.kind === kind)) {
    const wanted = [...new Set(rows.flatMap((row) => idsIn(reference, row)))].filter((id) => !known.has(`${reference.target} ${id}`));
    for (let start = 0; start < wanted.length; start += CHUNK) {
      const some = wanted.slice(start, start + CHUNK);
      const found = await rowsIn(db).selectFrom(tableOfTarget(reference.target)).select("id").where("id", "in", some).execute();
      for (const { id } of found) known.add(`${reference.target} ${String(id)}`);
      const missing = some.find((id) => !known.has(`${reference.target} ${id}`));
      if (missing === undefined) continue;
      const holder = rows.find((row) => idsIn(reference, row).includes(missing));
      throw new DanglingReference({
        kind,
        id: String(holder?.["id"]),
        field: reference.field,
        missing: { kind: reference.target, id: missing },
      });
    }
  }
};

/** @throws {RecordInUse} if a record still refers to one of these */
export const checkNotInUse = async (db: BookDatabase, target: ReferenceTarget, ids: readonly string[]): Promise<void> => {
  const gone = new Set(ids);
  const uses: { kind: RecordKind; id: string; field: string; of: string }[] = [];
  for (const reference of allReferences.filter((one) => one.target === target)) {
    const { table, column } = reference;
    const select = rowsIn(db).selectFrom(table).select(["id", column]).orderBy("id");
    for (let start = 0; start < (reference.list ? 1 : ids.length); start += CHUNK) {
      const rows = await (
        reference.list ? select.where(column, "<>", "[]") : select.where(column, "in", ids.slice(start, start + CHUNK))
      ).execute();
      for (const row of rows) {
        for (const of of idsIn(reference, row)) {
          if (gone.has(of)) uses.push({ kind: reference.kind, id: String(row["id"]), field: reference.field, of });
        }
      }
    }
  }
  const first = uses[0];
  if (first === undefined) return;
  const ofFirst = uses.filter((use) => use.of === first.of);
  throw new RecordInUse({
    kind: target,
    id: first.of,
    usedBy: ofFirst.slice(0, 5).map(({ kind, id, field }) => ({ kind, id, field })),
    useCount: ofFirst.length,
  });
};

/** The references of a whole content that lead nowhere within it. */
export const danglingIn = (content: BookContent): readonly DanglingReference[] => {
  const present = new Set<string>(content.tables.map((table) => `table ${table.id}`));
  for (const kind of recordKinds) for (const record of content[contentKey[kind]]) present.add(`${kind} ${record.id}`);
  return allReferences.flatMap((reference) =>
    content[contentKey[reference.kind]].flatMap((record) => {
      const value = (record as Readonly<Record<string, unknown>>)[reference.field];
      const ids = reference.list ? (value as readonly string[]) : value === null ? [] : [value as string];
      return ids
        .filter((id) => !present.has(`${reference.target} ${id}`))
        .map(
          (id) =>
            new DanglingReference({
              kind: reference.kind,
              id: record.id,
              field: reference.field,
              missing: { kind: reference.target, id },
            }),
        );
    }),
  );
};
