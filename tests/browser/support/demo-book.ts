/** The program built, and the demo book laid down in a temporary folder with all its photographs, served by the real server. */
import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { demoPhotoEdition } from "../../../src/app/index.js";
import { programRoot, startServer, untilJobsDone } from "./server.js";
import type { RunningServer } from "./server.js";

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

export interface DemoBook {
  /** Stands for ~/Stipule; the book lies in `home/hobbin-carr`. */
  readonly home: string;
  readonly server: RunningServer;
  /** Ends the server and removes the folder with all that lies in it. */
  readonly remove: () => Promise<void>;
}

/** Builds what is older than its sources, lays the demo down, and waits until its photographs are brought and sorted. */
export const layDownDemo = async (): Promise<DemoBook> => {
  buildIfOlder();
  const home = await mkdtemp(path.join(tmpdir(), "stipule-walks-"));
  const folder = path.join(home, "hobbin-carr");
  // A demo book laid down before (nothing running on it) saves a minute while one writes walks.
  const laidDown = process.env["STIPULE_WALKS_BOOK"];
  if (laidDown === undefined) await cp(await demoPhotos(), `${folder}-photographs`, { recursive: true });
  else await cp(laidDown, folder, { recursive: true });
  const server = await startServer(folder, { home });
  const remove = async (): Promise<void> => {
    await server.stop();
    await rm(home, { recursive: true, force: true });
  };
  try {
    await untilJobsDone(server.url, 300_000);
  } catch (error) {
    await remove();
    throw error;
  }
  return { home, server, remove };
};
