/** The interface of a book's store; `sql-book-store.ts` implements it over kysely, `sqlite/` has what is SQLite's own. */
import type { Readable } from "node:stream";
import type { BookContent, BookInfo, PhotoId, ReferenceTable, TableId } from "../engine/index.js";
import type { RecordDamaged } from "./errors.js";
import type { RecordKind, RecordOf } from "./records/record-kinds.js";

export interface TableSummary {
  readonly id: TableId;
  readonly title: string;
  readonly notice: string;
  readonly taxonCount: number;
  readonly characterCount: number;
  readonly scoreCount: number;
}

/**
 * What may be done inside one edit. All of it is kept or none. Calls are carried out one after another in the order they
 * were made, whether or not each is awaited.
 */
export interface Edit {
  /** A record as it stands within this edit; the store's own `get` sees the book before the edit. */
  get<K extends RecordKind>(kind: K, id: string): Promise<RecordOf[K] | undefined>;
  list<K extends RecordKind>(kind: K): Promise<readonly RecordOf[K][]>;
  /**
   * Insert or replace by id. A new record comes last in its list; a replaced one keeps its place.
   * @throws {RecordInvalid} if it does not fit its schema
   * @throws {DanglingReference} if it refers to something that is not there: put that first
   */
  put<K extends RecordKind>(kind: K, record: RecordOf[K]): Promise<void>;
  /** Remove by id; what is not there needs no removing. @throws {RecordInUse} when something still refers to it. */
  remove(kind: RecordKind, id: string): Promise<void>;
  putInfo(info: BookInfo): Promise<void>;
  /**
   * Insert or replace a reference table, row by row where it differs.
   * @throws {RecordInvalid} if it does not fit its schema, or has an id, a cell or a hybrid twice
   * @throws {DanglingReference} if a score or a hybrid names a taxon, character or source that the table lacks
   */
  putTable(table: ReferenceTable): Promise<void>;
  /** @throws {RecordInUse} when a plant or an account still refers to it */
  removeTable(id: TableId): Promise<void>;
}

export interface EditDescription {
  /** What is done, in plain words. */
  readonly label: string;
  readonly by?: string;
  /** false: undo passes over it. */
  readonly undoable?: boolean;
}

export interface EditSummary {
  readonly id: number;
  /** ISO 8601 instant. */
  readonly at: string;
  /** What was done, in plain words. */
  readonly label: string;
  readonly by: string;
  readonly rowCount: number;
  readonly state: "done" | "undone";
  readonly undoable: boolean;
}

export type DerivativeSize = 320 | 2048;

/** The photo files: originals by hash, never changed; derivatives that can always be made again. */
export interface PhotoFiles {
  /**
   * Streams a file to a temporary name while hashing, fsyncs, renames to its hash. An original that is there already is
   * left alone. The reply says whether the file is new (a record may be missing all the same, when a run was killed between
   * the two); the caller records the photo in an edit afterwards.
   */
  addOriginal(bytes: Readable | Uint8Array): Promise<{ id: PhotoId; bytes: number; path: string; isNew: boolean }>;
  originalPath(id: PhotoId): string;
  hasOriginal(id: PhotoId): Promise<boolean>;
  /** Removes an original (a refused file). @throws {OriginalInUse} if a record, or one that undo or redo can bring back, refers to it */
  discardOriginal(id: PhotoId): Promise<void>;
  derivativePath(id: PhotoId, size: DerivativeSize): string;
  hasDerivative(id: PhotoId, size: DerivativeSize): Promise<boolean>;
  /**
   * Written to a temporary name, fsynced, renamed. Derivatives are JPEG files (`.jpg`): two to ten times as fast to encode as
   * WebP, measured in docs/decisions/0006-photographs.md.
   */
  writeDerivative(id: PhotoId, size: DerivativeSize, jpeg: Uint8Array): Promise<void>;
}

export interface ProofFinding {
  /** "notice": nothing is lost, for example an original whose import was taken back. Only "damage" makes a proof unclean. */
  readonly severity: "damage" | "notice";
  readonly code:
    | "database-damaged"
    | "original-missing"
    | "original-changed"
    | "original-unlisted"
    | "leftover-temporary"
    | "record-invalid"
    | "dangling-reference";
  readonly text: string;
  readonly path?: string;
}
export interface ProofReport {
  /** No finding is damage. */
  readonly clean: boolean;
  readonly originalsChecked: number;
  readonly recordsChecked: number;
  readonly findings: readonly ProofFinding[];
}

/** What was done when the book was opened. */
export interface OpeningReport {
  /** Half-written files of a run that was killed, removed from `incoming/`. */
  readonly leftoversRemoved: number;
  /** Schema the book had; the present one unless it was brought up to date. */
  readonly schemaBefore: number;
  readonly schema: number;
  /** Path of the backup taken; null when the last one is younger than a day. */
  readonly backup: string | null;
  /** Why no backup could be taken although one was due; null when all is well. The book is open all the same. */
  readonly backupFailure: string | null;
}

export interface BookStore {
  /** The folder of the book: `stipule.sqlite`, `originals/`, `derived/`, `backups/`, `incoming/`. */
  readonly folder: string;
  readonly opening: OpeningReport;
  readonly files: PhotoFiles;
  /** @throws {RecordDamaged} if the book's own data cannot be read */
  info(): Promise<BookInfo>;
  /** In the order in which they were put. A damaged row is left out; `damaged()` names it. */
  list<K extends RecordKind>(kind: K): Promise<readonly RecordOf[K][]>;
  /**
   * How many there are, damaged rows included; none is read.
   * @param empty only those that hold null in all of these fields
   */
  count<K extends RecordKind>(kind: K, empty?: readonly (keyof RecordOf[K])[]): Promise<number>;
  /** @throws {RecordDamaged} if the row is no valid record */
  get<K extends RecordKind>(kind: K, id: string): Promise<RecordOf[K] | undefined>;
  tables(): Promise<readonly TableSummary[]>;
  table(id: TableId): Promise<ReferenceTable | undefined>;
  /** Everything, as plain data of one moment. Damaged rows are left out; an archive asks `damaged()` first. */
  content(): Promise<BookContent>;
  /** Every stored row that is no valid record. */
  damaged(): Promise<readonly RecordDamaged[]>;
  /**
   * One transaction, logged. Nothing of it is kept when `change` throws. Edits wait for each other. An edit that changes
   * nothing leaves no entry and does not end redo.
   * @throws {TypeError} if called inside another edit, which would wait for itself
   */
  edit<T>(what: EditDescription, change: (edit: Edit) => Promise<T>): Promise<T>;
  /**
   * Makes the book hold exactly this content, as one edit: what is not in it is removed. Lays down a demo or an archive.
   * @throws {RecordInvalid | DanglingReference} if the content is not sound in itself
   */
  putContent(content: BookContent, what: EditDescription): Promise<void>;
  /** Takes back the newest undoable edit that stands; null when there is none. @throws {UndoRefused} if rows have changed since */
  undo(): Promise<EditSummary | null>;
  /** Makes the last edit taken back again; null when there is none. @throws {UndoRefused} */
  redo(): Promise<EditSummary | null>;
  /** Newest first. */
  history(limit: number): Promise<readonly EditSummary[]>;
  /** Re-hashes every original and checks the database and every record. @throws the signal's reason when aborted */
  proof(progress?: (done: number, total: number) => void, signal?: AbortSignal): Promise<ProofReport>;
  /** A consistent copy of the database in one file, while it is in use. @throws {FolderNotWritable | DiskFull} */
  backupTo(path: string): Promise<void>;
  /** Waits for edits under way. Closing twice does nothing. */
  close(): Promise<void>;
}
