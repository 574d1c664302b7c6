/** The front door of the command line. */
export { processTerminal, run } from "./program.js";
export { exitCodes } from "./terminal.js";
export type { Terminal } from "./terminal.js";
