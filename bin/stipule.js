#!/usr/bin/env node
// The program as installed: runs what `npm run build` made.
import { existsSync } from "node:fs";

const built = new URL("../dist/cli/index.js", import.meta.url);
if (existsSync(built)) {
  const { processTerminal, run } = await import(built.href);
  await run(process.argv.slice(2), processTerminal());
} else {
  console.error("Stipule has not been built yet. In its folder run: npm install, then npm run build (or npm start).");
  process.exitCode = 1;
}
