/** The front door of the command line. */
export { processTerminal, run } from "./main.js";
export { exitCodes } from "./terminal.js";
export type { Terminal } from "./terminal.js";
