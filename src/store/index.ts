/**
 * The front door of the store: what a book can be asked and told. Rows, column names and SQL stay inside. Every change is
 * an edit: one transaction, logged with the rows before and after, so that it can be undone after a restart and read as
 * history.
 */
export type {
  BookStore,
  Edit,
  EditSummary,
  ProofReport,
  ProofFinding,
  RecordKind,
  RecordOf,
  TableSummary,
  PhotoFiles,
  DerivativeSize,
} from "./book-store.js";
