/** Starts and ends the real server as a process of its own, as `npm start` does. */
import { spawn } from "node:child_process";
import { createServer } from "node:net";
import path from "node:path";
import { fileURLToPath } from "node:url";

export const programRoot = fileURLToPath(new URL("../../..", import.meta.url));

/** A port nobody listens on at the moment. */
export const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      const port = typeof address === "object" && address !== null ? address.port : 0;
      probe.close(() => resolve(port));
    });
  });

export interface RunningServer {
  readonly url: string;
  readonly port: number;
  readonly folder: string;
  /** Ends it as a person would; resolves when the process is gone. */
  readonly stop: () => Promise<void>;
  /** Ends it without a word, as a crash or a power cut would. */
  readonly kill: () => Promise<void>;
}

/**
 * Serves a folder; resolves when it answers.
 * @param home folder that stands for ~/Stipule; a book in `home/hobbin-carr` is the demo's
 */
export const startServer = async (folder: string, options: { readonly home: string; readonly port?: number }): Promise<RunningServer> => {
  const port = options.port ?? (await freePort());
  const child = spawn(
    process.execPath,
    [path.join(programRoot, "bin", "stipule.js"), "--book", folder, "serve", "--port", String(port), "--no-open"],
    { cwd: programRoot, env: { ...process.env, STIPULE_HOME: options.home }, stdio: ["ignore", "ignore", "pipe"] },
  );
  let said = "";
  child.stderr.setEncoding("utf8").on("data", (text: string) => (said += text));
  const gone = new Promise<void>((resolve) => child.once("exit", () => resolve()));
  const end = async (signal: NodeJS.Signals): Promise<void> => {
    if (child.exitCode === null && child.signalCode === null) child.kill(signal);
    await gone;
  };
  const url = `http://localhost:${port}`;
  const late = Date.now() + 60_000;
  for (;;) {
    if (child.exitCode !== null || Date.now() > late) {
      await end("SIGKILL");
      throw new Error(`The server for ${folder} did not start: ${said}`);
    }
    const answer = await fetch(`${url}/api/book`).catch(() => undefined);
    if (answer?.ok === true) break;
    await new Promise((resolve) => setTimeout(resolve, 150));
  }
  return { url, port, folder, stop: () => end("SIGTERM"), kill: () => end("SIGKILL") };
};

interface JobAnswer {
  readonly jobs: readonly { readonly state: string; readonly message: string }[];
}

/** Waits until no job of the server runs. @throws when one fails or the time is over */
export const untilJobsDone = async (url: string, withinMs: number): Promise<void> => {
  const late = Date.now() + withinMs;
  while (Date.now() < late) {
    const { jobs } = (await (await fetch(`${url}/api/jobs`)).json()) as JobAnswer;
    const failed = jobs.find((job) => job.state === "failed");
    if (failed !== undefined) throw new Error(`A job failed: ${failed.message}`);
    if (jobs.every((job) => job.state !== "running")) return;
    await new Promise((resolve) => setTimeout(resolve, 500));
  }
  throw new Error("The jobs of the server did not end in time.");
};
