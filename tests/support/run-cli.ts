/** The command line run within the test's own process, its words and exit code as they would come out of a process. */
import { run } from "../../src/cli/index.js";
import { programRoot } from "./demo-bench.js";

export interface Ended {
  readonly rc: number;
  readonly out: string;
  readonly err: string;
}

/** @param home where books lie when nobody says otherwise */
export const commandLine =
  (home: string) =>
  async (...words: readonly string[]): Promise<Ended> => {
    const ended = { rc: 0, out: "", err: "" };
    await run(words, {
      out: (text) => (ended.out += `${text}\n`),
      err: (text) => (ended.err += `${text}\n`),
      env: { STIPULE_HOME: home },
      home,
      clock: () => new Date(),
      programRoot,
      setExitCode: (code) => (ended.rc = code),
    });
    return ended;
  };

/** What a verb said with --json. */
export const jsonOf = <T>({ out }: Ended): T => JSON.parse(out) as T;
