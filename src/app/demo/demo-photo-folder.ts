/** A folder on disc for the demo's photographs. */
import { randomUUID } from "node:crypto";
import { mkdir, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { DemoPhotoFolder } from "./draw-demo-photos.js";

/** Opens (and makes) the folder at `path`. Files are written under another name first and then renamed. */
export async function demoPhotoFolder(path: string): Promise<DemoPhotoFolder> {
  await mkdir(path, { recursive: true });
  return {
    list: async () => (await readdir(path)).filter((name) => !name.endsWith(".part")),
    read: async (name) => new Uint8Array(await readFile(join(path, name))),
    write: async (name, bytes) => {
      const part = join(path, `${name}.${randomUUID()}.part`);
      try {
        await writeFile(part, bytes);
        await rename(part, join(path, name));
      } catch (cause) {
        await rm(part, { force: true });
        throw cause;
      }
    },
  };
}
