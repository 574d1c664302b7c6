import { expect, it } from "vitest";
import { oneAtATime } from "./one-at-a-time.js";

it("runs tasks in the order asked for, goes on after a failure, and is idle at the end", async () => {
  const queue = oneAtATime();
  const seen: string[] = [];
  const task = (name: string, ms: number) => async (): Promise<string> => {
    seen.push(`${name} begins`);
    await new Promise((resolve) => setTimeout(resolve, ms));
    seen.push(`${name} ends`);
    return name;
  };
  const slow = queue.run(task("slow", 15));
  const bad = queue.run(() => Promise.reject(new Error("bad"))).catch((error: unknown) => error);
  void queue.run(task("quick", 0)).then(() => queue.run(task("late", 0)));
  expect(await slow).toBe("slow");
  expect(await bad).toEqual(new Error("bad"));
  await queue.idle();
  expect(seen.slice(0, 4)).toEqual(["slow begins", "slow ends", "quick begins", "quick ends"]);
});
