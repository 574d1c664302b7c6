/** A folder of its own for a test, removed at the end of the file's tests. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";

/** Call at the top of a test file; each call of the result makes a new, empty folder. */
export const temporaryFolders = (): (() => string) => {
  const made: string[] = [];
  afterAll(() => {
    for (const folder of made) rmSync(folder, { recursive: true, force: true });
  });
  return () => {
    const folder = mkdtempSync(join(tmpdir(), "stipule-"));
    made.push(folder);
    return folder;
  };
};
