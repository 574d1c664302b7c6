/** The demo year as tests use it. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { readDemoYear, type DemoYear } from "../../src/engine/index.js";

const path = fileURLToPath(new URL("../../demo/hobbin-carr.json", import.meta.url));

/** A fresh copy each time: tests may change theirs. */
export const demoYear = (): DemoYear => readDemoYear(JSON.parse(readFileSync(path, "utf8")));
