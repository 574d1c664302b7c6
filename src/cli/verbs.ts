/** What a verb's file gives: a function that adds it to the program. */
import type { Command } from "commander";
import type { Terminal } from "./terminal.js";

export type AddVerb = (program: Command, terminal: Terminal) => void;

/** The text of marked spans, for lines of plain text. */
export const plainText = (spans: readonly { readonly text: string }[]): string => spans.map(({ text }) => text).join("");
