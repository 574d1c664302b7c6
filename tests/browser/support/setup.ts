/**
 * Before the walks: builds what is older than its sources, lays down the demo book with its photographs and an empty book
 * in a temporary folder, starts the real server for each. After them: ends both and removes the folder.
 */
import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { demoPhotoEdition } from "../../../src/app/index.js";
import { chromiumPath, noChromium } from "./chromium.js";
import { programRoot, startServer, untilJobsDone } from "./server.js";

const newestIn = (folder: string): number =>
  Math.max(
    0,
    ...readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && !entry.name.includes(".test."))
      .map((entry) => statSync(path.join(entry.parentPath, entry.name)).mtimeMs),
  );

const changedAt = (file: string): number => (existsSync(file) ? statSync(file).mtimeMs : 0);

const buildIfOlder = (): void => {
  const built = ["dist/cli.tsbuildinfo", "dist/web/index.html"].map((file) => changedAt(path.join(programRoot, file)));
  if (!existsSync(path.join(programRoot, "dist/cli/main.js")) || Math.min(...built) < newestIn(path.join(programRoot, "src"))) {
    console.log("Building ...");
    execFileSync("npm", ["run", "build"], { cwd: programRoot, stdio: ["ignore", "ignore", "inherit"] });
  }
};

/** The drawn photographs are kept between runs, by edition of the demo; the first run draws them. */
const demoPhotos = async (): Promise<string> => {
  const demo: unknown = JSON.parse(await readFile(path.join(programRoot, "demo/hobbin-carr.json"), "utf8"));
  const edition = demoPhotoEdition(demo);
  const kept = path.join(programRoot, ".cache/demo-photos", edition);
  // Makes only what is missing.
  execFileSync("npm", ["run", "--silent", "demo:photos"], { cwd: programRoot, stdio: ["ignore", "ignore", "inherit"] });
  await writeFile(path.join(kept, ".edition"), edition);
  return kept;
};

const setUp = async (): Promise<(() => Promise<void>) | undefined> => {
  if (chromiumPath === undefined) {
    if (process.env["CI"] !== undefined) throw new Error(noChromium);
    console.log(`${noChromium} The walks are skipped.`);
    return undefined;
  }
  buildIfOlder();
  const home = await mkdtemp(path.join(tmpdir(), "stipule-walks-"));
  const demoFolder = path.join(home, "hobbin-carr");
  // A demo book laid down before (nothing running on it) saves a minute while one writes walks.
  const laidDown = process.env["STIPULE_WALKS_BOOK"];
  if (laidDown === undefined) await cp(await demoPhotos(), `${demoFolder}-photographs`, { recursive: true });
  else await cp(laidDown, demoFolder, { recursive: true });
  const demo = await startServer(demoFolder, { home });
  await untilJobsDone(demo.url, 300_000);
  const empty = await startServer(path.join(home, "my-year"), { home });
  process.env["STIPULE_WALKS_HOME"] = home;
  process.env["STIPULE_WALKS_DEMO"] = demo.url;
  process.env["STIPULE_WALKS_EMPTY"] = empty.url;
  return async () => {
    await Promise.all([demo.stop(), empty.stop()]);
    await rm(home, { recursive: true, force: true });
  };
};

// oxlint-disable-next-line import/no-default-export -- what the test runner loads
export default setUp;
