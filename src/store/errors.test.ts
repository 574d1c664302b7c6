import { expect, it } from "vitest";
import { BookLocked, BookTooNew, DiskFull, FolderNotWritable, RecordInUse, isStoreError } from "./index.js";
import { tagged } from "./sqlite/sqlite-engine.js";

it("the guard knows the errors of the store and no other", () => {
  expect(isStoreError(new BookTooNew({ folder: "/b", found: 3, known: 1 }))).toBe(true);
  for (const other of [new Error("x"), new RangeError("x"), { code: "book-too-new" }, null, undefined])
    expect(isStoreError(other)).toBe(false);
});

it("what the disc says becomes a tagged error that keeps its cause; a bug stays what it is", () => {
  const said = (code: string): Error => Object.assign(new Error(code), { code });
  for (const code of ["EACCES", "EROFS", "SQLITE_READONLY_DBMOVED", "SQLITE_CANTOPEN"]) {
    const error = tagged(said(code), "/b");
    expect(error).toBeInstanceOf(FolderNotWritable);
    expect((error as FolderNotWritable).cause).toMatchObject({ code });
  }
  for (const code of ["ENOSPC", "SQLITE_FULL"]) expect(tagged(said(code), "/b")).toBeInstanceOf(DiskFull);
  const bug = new TypeError("x is not a function");
  expect(tagged(bug, "/b")).toBe(bug);
  const known = new BookLocked("/b", null);
  expect(tagged(known, "/other")).toBe(known);
});

it("messages name the thing, the remedy and what was kept", () => {
  expect(new BookLocked("/b", { pid: 7, since: "2022-07-01T10:00:00.000Z" }).message).toBe(
    'The book in "/b" is open in another program (process 7, since 2022-07-01T10:00:00.000Z). Close it there and try again; nothing was changed.',
  );
  const uses = [{ kind: "look", id: "L1", field: "photoIds" }] as const;
  expect(new RecordInUse({ kind: "photo", id: "p", usedBy: uses, useCount: 4 }).message).toBe(
    'The photo "p" is still used by look "L1" (photoIds) and 3 more. Change or remove these first; nothing was changed.',
  );
});
