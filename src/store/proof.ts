/** Proves a book: the structure of the database, every reference, every record, and every original by its hash. */
import { createHash } from "node:crypto";
import { createReadStream, existsSync } from "node:fs";
import { readdir } from "node:fs/promises";
import { join } from "node:path";
import type { PhotoId } from "../engine/index.js";
import type { ProofFinding, ProofReport } from "./book-store.js";
import { RecordDamaged } from "./errors.js";
import { originalName } from "./photo-files.js";
import { readContent } from "./read-book.js";
import { danglingIn } from "./records/references.js";
import { rowsIn } from "./records/tables.js";
import { meansDamage } from "./sqlite/sqlite-engine.js";
import type { Engine } from "./sqlite/sqlite-engine.js";

const hashOf = async (path: string, signal: AbortSignal | undefined): Promise<string> => {
  const hash = createHash("sha256");
  for await (const part of createReadStream(path, { highWaterMark: 1 << 20, ...(signal && { signal }) })) hash.update(part as Buffer);
  return hash.digest("hex");
};

const filesUnder = async (folder: string): Promise<readonly string[]> => {
  if (!existsSync(folder)) return [];
  const entries = await readdir(folder, { withFileTypes: true, recursive: true });
  return entries.filter((entry) => !entry.isDirectory()).map((entry) => join(entry.parentPath, entry.name));
};

/**
 * @param active temporary files being written at this moment
 * @param progress originals checked and their number
 * @throws the signal's reason when aborted
 */
export const proveBook = async ({
  folder,
  engine,
  active,
  progress,
  signal,
}: {
  folder: string;
  engine: Engine;
  active: ReadonlySet<string>;
  progress?: (done: number, total: number) => void;
  signal?: AbortSignal;
}): Promise<ProofReport> => {
  const findings: ProofFinding[] = [];
  const damage = (code: ProofFinding["code"], text: string, path?: string): void => {
    findings.push({ severity: "damage", code, text, ...(path !== undefined && { path }) });
  };
  const notice = (code: ProofFinding["code"], text: string, path: string): void => {
    findings.push({ severity: "notice", code, text, path });
  };
  signal?.throwIfAborted();

  for (const problem of engine.structureProblems()) {
    damage("database-damaged", `The database is damaged: ${problem}. Restore the latest backup; the damaged files are kept.`);
  }
  let recordsChecked = 0;
  let photoIds: readonly string[] = [];
  try {
    for (const broken of engine.brokenForeignKeys()) {
      damage("dangling-reference", `Row ${broken.row} of ${broken.table} refers to a row of ${broken.target} that is not there.`);
    }
    const rows = await rowsIn(engine.reader).selectFrom("photo").select("id").orderBy("id").execute();
    photoIds = rows.map((row) => String(row["id"]));
    const read = await engine.reader.transaction().execute(readContent);
    recordsChecked = read.recordCount;
    for (const damaged of read.damaged) damage("record-invalid", damaged.message);
    // What refers to a damaged record is no second fault.
    const left = new Set(read.damaged.map((one) => `${one.kind} ${one.id}`));
    for (const dangling of danglingIn(read.content)) {
      if (left.has(`${dangling.missing.kind} ${dangling.missing.id}`)) continue;
      damage(
        "dangling-reference",
        `The ${dangling.kind} "${dangling.id}" refers in ${dangling.field} to the ${dangling.missing.kind} "${dangling.missing.id}", which is not in the book.`,
      );
    }
  } catch (error) {
    if (error instanceof RecordDamaged) damage("record-invalid", error.message);
    else if (meansDamage(error)) {
      const reason = error instanceof Error ? error.message : String(error);
      damage("database-damaged", `The database cannot be read: ${reason}. Restore the latest backup; the damaged files are kept.`);
    } else throw error;
  }

  const listed = new Set<string>();
  let done = 0;
  for (const id of photoIds) {
    signal?.throwIfAborted();
    const path = join(folder, originalName(id as PhotoId));
    listed.add(path);
    if (!existsSync(path)) {
      damage(
        "original-missing",
        `The original of photograph ${id} is missing. Bring the photograph again, or copy it from a backup.`,
        path,
      );
    } else if ((await hashOf(path, signal)) !== id) {
      damage(
        "original-changed",
        `The original of photograph ${id} is not what was brought. Move this file away and bring the photograph again.`,
        path,
      );
    }
    done += 1;
    progress?.(done, photoIds.length);
  }
  for (const path of await filesUnder(join(folder, "originals"))) {
    if (!listed.has(path)) {
      notice(
        "original-unlisted",
        "This original belongs to no photograph of the book: an import was taken back or cut short. Bring it again or leave it.",
        path,
      );
    }
  }
  for (const path of await filesUnder(join(folder, "incoming"))) {
    if (!active.has(path)) notice("leftover-temporary", "A file was left half written. It is removed at the next opening.", path);
  }
  return { clean: findings.every((finding) => finding.severity === "notice"), originalsChecked: done, recordsChecked, findings };
};
