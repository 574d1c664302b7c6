/**
 * A program that is started as a process of its own, many times in one test, compiled first: loading TypeScript at each
 * start takes longer than what is tested. Compiled from the sources of this moment, never from an older build.
 */
import { mkdtempSync, mkdirSync, rmSync } from "node:fs";
import { join, resolve } from "node:path";
import { build } from "vite";
import { afterAll } from "vitest";

const root = resolve(import.meta.dirname, "../..");

/**
 * Call at the top of a test file. Packages stay where they are, so the folder lies within the project.
 * @param name a file of tests/support, without its ending
 * @returns arguments of `node` that run it
 */
export const compiledChild = async (name: string): Promise<readonly string[]> => {
  mkdirSync(join(root, ".cache"), { recursive: true });
  const folder = mkdtempSync(join(root, ".cache", "test-child-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const input = [join(root, "tests/support", `${name}.ts`), join(root, "src/media/worker.ts")];
  await build({
    root,
    configFile: false,
    logLevel: "error",
    build: {
      ssr: true,
      outDir: folder,
      minify: false,
      target: "node20",
      // Modules keep their own files: the pool of workers looks for its worker beside itself.
      rollupOptions: { input, output: { preserveModules: true, preserveModulesRoot: root, entryFileNames: "[name].js" } },
    },
  });
  return [join(folder, "tests/support", `${name}.js`)];
};
