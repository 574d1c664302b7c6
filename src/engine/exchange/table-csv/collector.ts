/** Gathers problems of a file, each with its place; beyond a limit they are counted, not listed. */
import type { z } from "zod";
import type { Problem } from "../../base/result.js";

const MOST_PROBLEMS = 200;

const cut = (text: string): string => (text.length > 80 ? `${text.slice(0, 79)}…` : text);

export class Collector {
  readonly problems: Problem[] = [];
  /** All of them, listed or not. */
  count = 0;
  add(code: string, where: string, text: string, value?: string): void {
    this.count += 1;
    if (this.problems.length < MOST_PROBLEMS)
      this.problems.push({ code, where, text, ...(value === undefined ? {} : { value: cut(value) }) });
  }
  /** What a schema has against a record, put into our words. */
  addIssues(where: string, error: z.ZodError): void {
    for (const issue of error.issues) this.add("not-valid", `${where}, ${issue.path.map(String).join(".")}`, issue.message);
  }
}
