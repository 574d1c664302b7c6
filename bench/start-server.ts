/** The compiled server on a book, as a process of its own, for the benches. */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { get } from "node:http";
import { createServer } from "node:net";

const freePort = async (): Promise<number> => {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const address = server.address();
  server.close();
  await once(server, "close");
  if (address === null || typeof address === "string") throw new Error("no port was given");
  return address.port;
};

/** Whether the book is told with 200; null while nobody listens. */
const isAnswered = (port: number): Promise<boolean | null> =>
  new Promise((resolve) => {
    get({ host: "127.0.0.1", port, path: "/api/book" }, (reply) => {
      reply.resume().once("end", () => resolve(reply.statusCode === 200));
    }).once("error", () => resolve(null));
  });

/** Starts a program of Node that tells /api/book, and waits for its first good reply. */
export const startServer = async (
  file: string,
  args: (port: number) => readonly string[],
): Promise<{ readonly port: number; readonly readyMs: number; readonly stop: () => Promise<void> }> => {
  const port = await freePort();
  const begin = performance.now();
  const child = spawn(process.execPath, [file, ...args(port)], { stdio: "ignore" });
  const ended = once(child, "exit");
  const stop = async (): Promise<void> => {
    child.kill("SIGTERM");
    await ended;
  };
  for (;;) {
    const answered = await isAnswered(port);
    if (answered === true) return { port, readyMs: performance.now() - begin, stop };
    if (answered === false || child.exitCode !== null) {
      await stop();
      throw new Error(`${file} does not tell the book; was it built?`);
    }
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
};
