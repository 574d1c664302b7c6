import { describe, expect, it } from "vitest";
import type { BroughtFile } from "../../../contract/index.js";
import { makeUploadQueue, type SendFile, type UploadQueue } from "./upload-queue.js";

async function* named(...names: string[]): AsyncGenerator<File> {
  for (const name of names) yield { name } as File;
}
const outcome = (fileName: string, kind: BroughtFile["outcome"]): BroughtFile => ({
  fileName,
  outcome: kind,
  photoId: null,
  code: kind,
  text: kind,
});
const end = async (queue: UploadQueue): Promise<void> =>
  new Promise((resolve) => {
    queue.subscribe(() => {
      if (!["running", "stopping"].includes(queue.state().phase)) resolve();
    });
  });

describe("upload queue", () => {
  it("brings two at a time, counts each outcome and passes system files over", async () => {
    const queue = makeUploadQueue();
    let now = 0;
    let most = 0;
    const send: SendFile = async (file) => {
      now += 1;
      most = Math.max(most, now);
      await new Promise((resolve) => setTimeout(resolve, 1));
      now -= 1;
      return outcome(file.name, file.name.startsWith("copy") ? "already-here" : file.name.endsWith(".txt") ? "refused" : "new");
    };
    queue.add(named("a.jpg", "b.jpg", ".DS_Store", "copy.jpg", "x.txt", "c.jpg"), send);
    await end(queue);
    expect(queue.state().phase).toBe("done");
    expect(queue.state().counts).toEqual({ found: 5, fresh: 3, alreadyHere: 1, refused: 1, failed: 0, passedOver: 1 });
    expect(queue.state().refusals.map((r) => r.fileName)).toEqual(["x.txt"]);
    expect(most).toBe(2);
  });

  it("stops taking files when told to, and lets those under way arrive", async () => {
    const queue = makeUploadQueue();
    const sent: string[] = [];
    queue.add(named("1", "2", "3", "4", "5", "6"), async (file) => {
      sent.push(file.name);
      if (file.name === "2") queue.stop();
      await Promise.resolve();
      return outcome(file.name, "new");
    });
    await end(queue);
    expect(queue.state().phase).toBe("stopped");
    expect(queue.state().counts.fresh).toBe(sent.length);
    expect(sent.length).toBeLessThan(6);
  });

  it("breaks off when three files in a row do not arrive, and keeps the count of what did", async () => {
    const queue = makeUploadQueue();
    queue.add(named("ok", "2", "3", "4", "5", "6", "7", "8"), async (file) => {
      await Promise.resolve();
      if (file.name === "ok") return outcome(file.name, "new");
      throw new Error("connection refused");
    });
    await end(queue);
    expect(queue.state()).toMatchObject({ phase: "broken", reason: "connection refused", counts: { fresh: 1 } });
    expect(queue.state().counts.failed).toBeLessThanOrEqual(4);
  });
});
