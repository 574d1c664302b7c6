/** Where the program starts as a process: `bin/stipule.js` loads the compiled form of this file. */
import { processTerminal, run } from "./program.js";

await run(process.argv.slice(2), processTerminal());
