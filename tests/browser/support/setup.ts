/**
 * Before the walks: the demo book with its photographs and an empty book in a temporary folder, each with the real server.
 * After them: ends both and removes the folder.
 */
import path from "node:path";
import { chromiumPath, noChromium } from "./chromium.js";
import { layDownDemo } from "./demo-book.js";
import { startServer } from "./server.js";

const setUp = async (): Promise<(() => Promise<void>) | undefined> => {
  if (chromiumPath === undefined) {
    if (process.env["CI"] !== undefined) throw new Error(noChromium);
    console.log(`${noChromium} The walks are skipped.`);
    return undefined;
  }
  const demo = await layDownDemo();
  const empty = await startServer(path.join(demo.home, "my-year"), { home: demo.home }).catch(async (error: unknown) => {
    await demo.remove();
    throw error;
  });
  process.env["STIPULE_WALKS_HOME"] = demo.home;
  process.env["STIPULE_WALKS_DEMO"] = demo.server.url;
  process.env["STIPULE_WALKS_EMPTY"] = empty.url;
  return async () => {
    await empty.stop();
    await demo.remove();
  };
};

// oxlint-disable-next-line import/no-default-export -- what the test runner loads
export default setUp;
