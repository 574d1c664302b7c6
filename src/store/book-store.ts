/** The interface of a book's store; `sqlite/` implements it. */
import type { Readable } from "node:stream";
import type {
  Account,
  BookContent,
  BookInfo,
  FollowedPlant,
  Happening,
  Look,
  Outing,
  Permission,
  Person,
  Photo,
  PhotoId,
  Reading,
  ReferenceTable,
  Slip,
  Spot,
  Stage,
  StageRecord,
  Stop,
  TableId,
  View,
  Voucher,
} from "../engine/index.js";

/** The kinds of records that are edited one by one, with the type of each. Reference tables have calls of their own. */
export interface RecordOf {
  person: Person;
  stage: Stage;
  view: View;
  spot: Spot;
  permission: Permission;
  plant: FollowedPlant;
  happening: Happening;
  outing: Outing;
  stop: Stop;
  stageRecord: StageRecord;
  look: Look;
  reading: Reading;
  slip: Slip;
  voucher: Voucher;
  photo: Photo;
  account: Account;
}
export type RecordKind = keyof RecordOf;

export interface TableSummary {
  readonly id: TableId;
  readonly title: string;
  readonly notice: string;
  readonly taxonCount: number;
  readonly characterCount: number;
  readonly scoreCount: number;
}

/** What may be done inside one edit. All of it is kept or none. */
export interface Edit {
  /** Insert or replace by id. */
  put<K extends RecordKind>(kind: K, record: RecordOf[K]): Promise<void>;
  /** Remove by id; @throws {RecordInUse} when something still refers to it. */
  remove(kind: RecordKind, id: string): Promise<void>;
  putInfo(info: BookInfo): Promise<void>;
  putTable(table: ReferenceTable): Promise<void>;
  removeTable(id: TableId): Promise<void>;
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
   * left alone. The reply says whether it is new; the caller records the photo in an edit afterwards.
   */
  addOriginal(bytes: Readable | Uint8Array): Promise<{ id: PhotoId; bytes: number; path: string; isNew: boolean }>;
  originalPath(id: PhotoId): string;
  hasOriginal(id: PhotoId): Promise<boolean>;
  /** Removes an original that no record refers to (a refused file); refuses otherwise. */
  discardOriginal(id: PhotoId): Promise<void>;
  derivativePath(id: PhotoId, size: DerivativeSize): string;
  hasDerivative(id: PhotoId, size: DerivativeSize): Promise<boolean>;
  /**
   * Written to a temporary name, fsynced, renamed. Derivatives are JPEG files (`.jpg`): two to three times as fast to make as
   * WebP at its usual effort, measured in docs/decisions/0006-photographs.md.
   */
  writeDerivative(id: PhotoId, size: DerivativeSize, jpeg: Uint8Array): Promise<void>;
}

export interface ProofFinding {
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
  readonly clean: boolean;
  readonly originalsChecked: number;
  readonly recordsChecked: number;
  readonly findings: readonly ProofFinding[];
}

export interface BookStore {
  /** The folder of the book: `stipule.sqlite`, `originals/`, `derived/`. */
  readonly folder: string;
  readonly files: PhotoFiles;
  info(): Promise<BookInfo>;
  list<K extends RecordKind>(kind: K): Promise<readonly RecordOf[K][]>;
  get<K extends RecordKind>(kind: K, id: string): Promise<RecordOf[K] | undefined>;
  tables(): Promise<readonly TableSummary[]>;
  table(id: TableId): Promise<ReferenceTable | undefined>;
  /** Everything, as plain data. */
  content(): Promise<BookContent>;
  /** One transaction, logged. Nothing of it is kept when `change` throws. */
  edit<T>(what: { label: string; by?: string; undoable?: boolean }, change: (edit: Edit) => Promise<T>): Promise<T>;
  /** Takes back the newest undoable edit that stands; null when there is none. */
  undo(): Promise<EditSummary | null>;
  redo(): Promise<EditSummary | null>;
  /** Newest first. */
  history(limit: number): Promise<readonly EditSummary[]>;
  /** Re-hashes every original and checks the database. */
  proof(progress?: (done: number, total: number) => void, signal?: AbortSignal): Promise<ProofReport>;
  close(): Promise<void>;
}
