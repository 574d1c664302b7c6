/** The command line from its sources, for tests that start it as a process of its own. */
import { processTerminal, run } from "../../src/cli/index.js";

await run(process.argv.slice(2), processTerminal());
