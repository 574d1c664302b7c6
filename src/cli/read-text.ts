import { readFile } from "node:fs/promises";
import { say } from "../words/index.js";
import { UsageError } from "./terminal.js";

/** A file as text. Bytes that are not UTF-8 become U+FFFD: who reads on must refuse it. @throws {UsageError} when it cannot be read. */
export const readText = async (path: string): Promise<string> => {
  try {
    return await readFile(path, "utf8");
  } catch (error) {
    throw new UsageError(say("usage.file", { path, why: error instanceof Error ? error.message : String(error) }));
  }
};
