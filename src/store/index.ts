/**
 * The front door of the store: what a book can be asked and told. Rows, column names and SQL stay inside. Every change is
 * an edit: one transaction, logged with the rows before and after, so that it can be undone after a restart and read as
 * history.
 */
export { beginBook, openBook, restoreLatestBackup } from "./open-book.js";
export {
  BookDamaged,
  BookLocked,
  BookNotFound,
  BookTooNew,
  DanglingReference,
  DiskFull,
  FolderNotEmpty,
  FolderNotWritable,
  MigrationFailed,
  NoBackup,
  OriginalInUse,
  RecordDamaged,
  RecordInUse,
  RecordInvalid,
  UndoRefused,
  isStoreError,
} from "./errors.js";
export type { StoreError, StoredKind } from "./errors.js";
export type { Clock } from "./sql-book-store.js";
export type {
  BookStore,
  Edit,
  EditDescription,
  EditSummary,
  OpeningReport,
  ProofReport,
  ProofFinding,
  TableSummary,
  PhotoFiles,
  DerivativeSize,
} from "./book-store.js";
export type { RecordKind, RecordOf } from "./records/record-kinds.js";
