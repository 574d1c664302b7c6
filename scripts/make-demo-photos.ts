/**
 * Makes the 199 photographs of the demo book into .cache/demo-photos/<edition>/ (or a folder named as first argument).
 * Run again, it makes only what is missing. Ctrl-C stops it between two photos.
 */
import { readFile, stat } from "node:fs/promises";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { demoPhotoEdition, demoPhotoFolder, drawDemoPhotos } from "../src/app/index.js";
import { renderPlate } from "../src/media/index.js";

async function main(): Promise<void> {
  const root = fileURLToPath(new URL("..", import.meta.url));
  const demo: unknown = JSON.parse(await readFile(join(root, "demo/hobbin-carr.json"), "utf8"));
  const [target, ...only] = process.argv.slice(2);
  const path = resolve(target ?? join(root, ".cache/demo-photos", demoPhotoEdition(demo)));
  const stop = new AbortController();
  process.once("SIGINT", () => stop.abort());
  const started = Date.now();
  const result = await drawDemoPhotos({
    demo,
    folder: await demoPhotoFolder(path),
    render: renderPlate,
    signal: stop.signal,
    ...(only.length === 0 ? {} : { only }),
    progress: ({ done, total, file, made }) => {
      if (made || done === total) console.log(`${String(done).padStart(3)}/${total} ${file}`);
    },
  });
  let bytes = 0;
  for (const name of [...result.made, ...result.kept]) bytes += (await stat(join(path, name))).size;
  console.log(
    `${result.made.length} made, ${result.kept.length} kept, ${(bytes / 1e6).toFixed(1)} MB, ${((Date.now() - started) / 1000).toFixed(1)} s: ${path}`,
  );
  if (result.stopped) process.exitCode = 1;
}

await main();
