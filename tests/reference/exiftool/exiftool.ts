/** Asks the installed exiftool; finds the shared data. Both may be absent. */
import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export type ExiftoolTags = Readonly<Record<string, string | number>>;

/** Whether exiftool can be run. */
export const hasExiftool = ((): boolean => {
  try {
    execFileSync("exiftool", ["-ver"], { stdio: "pipe" });
    return true;
  } catch {
    return false;
  }
})();

/** All tags by group, numbers as numbers; an exit code of 1 (a file with an error) still gives the tags. */
export const exiftool = (paths: readonly string[]): readonly ExiftoolTags[] => {
  const options = ["-n", "-j", "-G1", "-a", "-charset", "exif=utf8"];
  try {
    return JSON.parse(execFileSync("exiftool", [...options, ...paths], { stdio: "pipe", encoding: "utf8" })) as ExiftoolTags[];
  } catch (error) {
    return JSON.parse((error as { stdout: string }).stdout) as ExiftoolTags[];
  }
};

const root = fileURLToPath(new URL("../../..", import.meta.url));
const shared = process.env["STIPULE_SHARED"] ?? join(root, "..", "shared");

/** A folder of the shared data, or null. */
export const sharedFolder = (name: string): string | null => {
  const folder = join(shared, "data", name);
  return existsSync(folder) ? folder : null;
};

/** A file of the project. */
export const projectFile = (name: string): string => join(root, name);
