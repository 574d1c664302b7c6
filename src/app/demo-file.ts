/** The demo year that comes with Stipule: demo/hobbin-carr.json under the root of the program. */
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { readDemoYear } from "../engine/index.js";
import type { DemoYear } from "../engine/index.js";

/** @throws when the file is missing or is not the demo: the program is not whole. */
export const readDemo = async (programRoot: string): Promise<DemoYear> =>
  readDemoYear(JSON.parse(await readFile(join(programRoot, "demo", "hobbin-carr.json"), "utf8")) as unknown);
