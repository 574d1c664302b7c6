#!/usr/bin/env node
// The program as installed: runs what `npm run build` made.
import { existsSync } from "node:fs";

const built = new URL("../dist/cli/main.js", import.meta.url);
if (existsSync(built)) await import(built.href);
else {
  console.error("Stipule has not been built yet. In its folder run: npm install, then npm run build (or npm start).");
  process.exitCode = 1;
}
