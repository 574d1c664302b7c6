// `npm start`: builds what is missing or older than its sources, then serves the demo book (or --book DIR).
// Plain JavaScript for any Node: it has to run before anything is built, and to say so when Node is too old.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, statSync, utimesSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "..");
const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);

/** The newest change below a folder, milliseconds; 0 when there is none. */
const newestIn = (folder) => {
  let newest = 0;
  if (!existsSync(folder)) return newest;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const inner = path.join(folder, entry.name);
    newest = Math.max(newest, entry.isDirectory() ? newestIn(inner) : statSync(inner).mtimeMs);
  }
  return newest;
};

const changedAt = (file) => (existsSync(file) ? statSync(file).mtimeMs : 0);

/** Runs one of the installed tools with this Node; its words are shown only when it fails. */
const runTool = (what, tool, args) => {
  process.stderr.write(`${what} ... `);
  const begun = Date.now();
  const done = spawnSync(process.execPath, [path.join(root, "node_modules", ...tool), ...args], { cwd: root, encoding: "utf8" });
  if (done.status === 0) {
    process.stderr.write(`done (${((Date.now() - begun) / 1000).toFixed(1)} s)\n`);
    return;
  }
  process.stderr.write(`failed\n${done.stdout ?? ""}${done.stderr ?? ""}${done.error?.message ?? ""}\n`);
  process.exit(1);
};

/** The sources of a layer, or its configuration, are newer than `mark`, the file that says when it was built. */
const isOlder = (mark, layers) => changedAt(mark) < Math.max(...layers.map((layer) => newestIn(path.join(root, "src", layer))));

const build = () => {
  const stamp = path.join(root, "dist", ".program-built");
  const entry = path.join(root, "dist", "cli", "index.js");
  const layers = ["engine", "words", "publish", "contract", "store", "media", "app", "server", "cli"];
  if (!existsSync(entry) || isOlder(stamp, layers)) {
    // The time before building, so that a source changed meanwhile counts as newer.
    const begun = new Date();
    runTool("Building the program", ["typescript", "bin", "tsc"], ["-b"]);
    writeFileSync(stamp, begun.toISOString());
    utimesSync(stamp, begun, begun);
  }
  const page = path.join(root, "dist", "web", "index.html");
  if (isOlder(page, ["web", "words", "publish", "contract", "engine"]))
    runTool("Building the page", ["vite", "bin", "vite.js"], ["build", "--logLevel", "warn"]);
};

if (major < 20 || (major === 20 && minor < 19)) {
  console.error(
    `Stipule needs Node.js 20.19 or newer; this is ${process.versions.node}. Install a newer one from your usual source and start again.`,
  );
  process.exitCode = 1;
} else if (!existsSync(path.join(root, "node_modules", "typescript"))) {
  console.error("The packages Stipule is made of are not installed yet. Run: npm install");
  process.exitCode = 1;
} else {
  build();
  const { processTerminal, run } = await import(pathToFileURL(path.join(root, "dist", "cli", "index.js")).href);
  await run(["serve", ...process.argv.slice(2)], processTerminal());
}
