/**
 * What can go wrong with a book, as tagged errors: a stable `code`, the facts as fields, and a sentence that names the
 * remedy and says what was kept. The interface translates by `code`; the text here is the English fallback.
 */
import type { RecordKind } from "./records/record-kinds.js";

/** The kinds an error can name: the records, a reference table and the parts of one, and the book's own data. */
export type StoredKind = RecordKind | "table" | "table-part" | "book";

const quoted = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(", ");

/** There is no book in this folder. The caller can offer to begin one there or to choose another folder. */
export class BookNotFound extends Error {
  readonly code = "book-not-found";
  readonly folder: string;
  constructor(folder: string, options?: ErrorOptions) {
    super(`There is no book in "${folder}". Choose the folder that holds stipule.sqlite, or begin a new book.`, options);
    this.name = "BookNotFound";
    this.folder = folder;
  }
}

/**
 * The database cannot be read. The caller can offer `restoreLatestBackup` when `latestBackup` is not null. Nothing was
 * changed; the photographs are files of their own and are not touched by it.
 */
export class BookDamaged extends Error {
  readonly code = "book-damaged";
  readonly folder: string;
  readonly reason: string;
  /** Path of the newest file in `backups/`; null when there is none. */
  readonly latestBackup: string | null;
  /** A write-ahead log lies beside the database: keep the two together. */
  readonly hasWal: boolean;
  constructor(facts: { folder: string; reason: string; latestBackup: string | null; hasWal: boolean; cause?: unknown }) {
    const wayOut =
      facts.latestBackup === null
        ? "There is no backup in this folder; copy one from elsewhere into backups/."
        : `Restore the backup "${facts.latestBackup}"; the damaged files are kept beside.`;
    const wal = facts.hasWal ? " A stipule.sqlite-wal lies beside the database; keep both files together." : "";
    super(
      `The database of the book in "${facts.folder}" is damaged: ${facts.reason}. Nothing was changed, and the original photographs are not in this file. ${wayOut}${wal}`,
      { cause: facts.cause },
    );
    this.name = "BookDamaged";
    this.folder = facts.folder;
    this.reason = facts.reason;
    this.latestBackup = facts.latestBackup;
    this.hasWal = facts.hasWal;
  }
}

/** Another process, or this one, has the book open. The caller can ask the user to close it there, and try again. */
export class BookLocked extends Error {
  readonly code = "book-locked";
  readonly folder: string;
  /** Who says to hold it; null when that is not known. Only told, never relied on. */
  readonly holder: { readonly pid: number; readonly since: string } | null;
  constructor(folder: string, holder: { readonly pid: number; readonly since: string } | null, options?: ErrorOptions) {
    const who = holder === null ? "another program" : `another program (process ${holder.pid}, since ${holder.since})`;
    super(`The book in "${folder}" is open in ${who}. Close it there and try again; nothing was changed.`, options);
    this.name = "BookLocked";
    this.folder = folder;
    this.holder = holder;
  }
}

/** The book was written by a newer version. The caller can only ask for an update of the program. */
export class BookTooNew extends Error {
  readonly code = "book-too-new";
  readonly folder: string;
  readonly found: number;
  readonly known: number;
  constructor(facts: { folder: string; found: number; known: number }) {
    super(
      `The book in "${facts.folder}" was written by a newer version of Stipule (schema ${facts.found}; this version knows ${facts.known}). Update Stipule; nothing was changed.`,
    );
    this.name = "BookTooNew";
    this.folder = facts.folder;
    this.found = facts.found;
    this.known = facts.known;
  }
}

/** A change of schema failed and was rolled back. The caller can show the cause; the book is as before. */
export class MigrationFailed extends Error {
  readonly code = "migration-failed";
  readonly migration: string;
  constructor(migration: string, options: ErrorOptions) {
    super(`The book could not be brought to the present schema: step "${migration}" failed. The book is as it was before.`, options);
    this.name = "MigrationFailed";
    this.migration = migration;
  }
}

/** Nothing can be written in the folder. The caller can ask for another folder or for the right to write. */
export class FolderNotWritable extends Error {
  readonly code = "folder-not-writable";
  readonly folder: string;
  constructor(folder: string, options: ErrorOptions) {
    super(`Nothing can be written in "${folder}". Allow writing there or choose another folder; nothing was changed.`, options);
    this.name = "FolderNotWritable";
    this.folder = folder;
  }
}

/** A book is to begin in a folder that holds something. The caller can open the book there, or choose an empty folder. */
export class FolderNotEmpty extends Error {
  readonly code = "folder-not-empty";
  readonly folder: string;
  readonly found: readonly string[];
  readonly holdsBook: boolean;
  constructor(facts: { folder: string; found: readonly string[]; holdsBook: boolean }) {
    super(
      facts.holdsBook
        ? `There is a book in "${facts.folder}" already. Open it, or choose an empty folder; nothing was changed.`
        : `The folder "${facts.folder}" holds other things (${quoted(facts.found.slice(0, 3))}). Choose an empty or a new folder; nothing was changed.`,
    );
    this.name = "FolderNotEmpty";
    this.folder = facts.folder;
    this.found = facts.found;
    this.holdsBook = facts.holdsBook;
  }
}

/** No sound backup in `backups/`. The caller can ask for one kept elsewhere. */
export class NoBackup extends Error {
  readonly code = "no-backup";
  readonly folder: string;
  /** Backups that were looked at and are damaged themselves. */
  readonly damaged: readonly string[];
  constructor(folder: string, damaged: readonly string[]) {
    const tried = damaged.length === 0 ? "" : ` ${damaged.length} were found, and are damaged themselves.`;
    super(
      `There is no sound backup in "${folder}/backups".${tried} Copy one from elsewhere into that folder and try again; nothing was changed.`,
    );
    this.name = "NoBackup";
    this.folder = folder;
    this.damaged = damaged;
  }
}

/** The disc is full. The caller can ask for room and repeat; what was acknowledged before is kept. */
export class DiskFull extends Error {
  readonly code = "disk-full";
  readonly folder: string;
  constructor(folder: string, options: ErrorOptions) {
    super(`There is no room left on the disc of "${folder}". Make room and repeat; everything before this step is kept.`, options);
    this.name = "DiskFull";
    this.folder = folder;
  }
}

/** What was to be put is not a valid record. Nothing of the edit is kept; the caller can show the field. */
export class RecordInvalid extends Error {
  readonly code = "record-invalid";
  readonly kind: StoredKind;
  readonly id: string;
  /** Path of the field: `values.3`. */
  readonly where: string;
  readonly problem: string;
  constructor(facts: { kind: StoredKind; id: string; where: string; problem: string; cause?: unknown }) {
    super(`The ${facts.kind} "${facts.id}" cannot be kept: ${facts.where || "it"}: ${facts.problem}. Nothing of this edit was kept.`, {
      cause: facts.cause,
    });
    this.name = "RecordInvalid";
    this.kind = facts.kind;
    this.id = facts.id;
    this.where = facts.where;
    this.problem = facts.problem;
  }
}

/** A stored row is no valid record. Other records can be read; the caller can put a sound one over it or remove it. */
export class RecordDamaged extends Error {
  readonly code = "record-damaged";
  readonly kind: StoredKind;
  readonly id: string;
  readonly problem: string;
  constructor(facts: { kind: StoredKind; id: string; problem: string; cause?: unknown }) {
    super(
      `The stored ${facts.kind} "${facts.id}" is damaged: ${facts.problem}. Everything else can be read; put a sound one over it, undo, or take it from a backup.`,
      { cause: facts.cause },
    );
    this.name = "RecordDamaged";
    this.kind = facts.kind;
    this.id = facts.id;
    this.problem = facts.problem;
  }
}

/** Something still refers to what was to be removed. The caller can show where, and change that first. */
export class RecordInUse extends Error {
  readonly code = "record-in-use";
  readonly kind: StoredKind;
  readonly id: string;
  /** The first few that refer to it. */
  readonly usedBy: readonly { readonly kind: RecordKind; readonly id: string; readonly field: string }[];
  readonly useCount: number;
  constructor(facts: {
    kind: StoredKind;
    id: string;
    usedBy: readonly { readonly kind: RecordKind; readonly id: string; readonly field: string }[];
    useCount: number;
  }) {
    const named = facts.usedBy.map((use) => `${use.kind} "${use.id}" (${use.field})`).join(", ");
    const more = facts.useCount > facts.usedBy.length ? ` and ${facts.useCount - facts.usedBy.length} more` : "";
    super(`The ${facts.kind} "${facts.id}" is still used by ${named}${more}. Change or remove these first; nothing was changed.`);
    this.name = "RecordInUse";
    this.kind = facts.kind;
    this.id = facts.id;
    this.usedBy = facts.usedBy;
    this.useCount = facts.useCount;
  }
}

/** What was to be put refers to something that is not there. The caller can put that first. */
export class DanglingReference extends Error {
  readonly code = "dangling-reference";
  readonly kind: StoredKind;
  readonly id: string;
  readonly field: string;
  readonly missing: { readonly kind: string; readonly id: string };
  constructor(facts: { kind: StoredKind; id: string; field: string; missing: { kind: string; id: string } }) {
    super(
      `The ${facts.kind} "${facts.id}" refers in ${facts.field} to the ${facts.missing.kind} "${facts.missing.id}", which is not in the book. Put that first; nothing of this edit was kept.`,
    );
    this.name = "DanglingReference";
    this.kind = facts.kind;
    this.id = facts.id;
    this.field = facts.field;
    this.missing = facts.missing;
  }
}

/** An edit cannot be taken back or made again because its rows have changed since. The book is as it was. */
export class UndoRefused extends Error {
  readonly code = "undo-refused";
  readonly direction: "undo" | "redo";
  readonly editId: number;
  readonly label: string;
  /** The row that stands in the way. */
  readonly table: string;
  readonly key: string;
  constructor(facts: {
    direction: "undo" | "redo";
    editId: number;
    label: string;
    table: string;
    key: string;
    why: string;
    cause?: unknown;
  }) {
    super(
      `"${facts.label}" cannot be ${facts.direction === "undo" ? "taken back" : "made again"}: ${facts.table} ${facts.key} ${facts.why}. Change it by hand instead; nothing was changed.`,
      { cause: facts.cause },
    );
    this.name = "UndoRefused";
    this.direction = facts.direction;
    this.editId = facts.editId;
    this.label = facts.label;
    this.table = facts.table;
    this.key = facts.key;
  }
}

/** An original is not thrown away while a photograph, or an edit that can be undone or redone, refers to it. */
export class OriginalInUse extends Error {
  readonly code = "original-in-use";
  readonly id: string;
  constructor(id: string) {
    super(`The original ${id} belongs to a photograph of this book, or to one that undo or redo can bring back. It was kept.`);
    this.name = "OriginalInUse";
    this.id = id;
  }
}

const classes = [
  BookNotFound,
  BookDamaged,
  BookLocked,
  BookTooNew,
  MigrationFailed,
  FolderNotWritable,
  FolderNotEmpty,
  NoBackup,
  DiskFull,
  RecordInvalid,
  RecordDamaged,
  RecordInUse,
  DanglingReference,
  UndoRefused,
  OriginalInUse,
] as const;

export type StoreError = InstanceType<(typeof classes)[number]>;

/** Whether an error is one of this closed list: the world failed, not the program. */
export const isStoreError = (error: unknown): error is StoreError => classes.some((known) => error instanceof known);
