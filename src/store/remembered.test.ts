import { expect, it } from "vitest";
import { remembered } from "./remembered.js";

it("reads once until it is told to forget, and does not remember a failure", async () => {
  const memory = remembered();
  let reads = 0;
  const read = () => Promise.resolve((reads += 1));
  expect([await memory.once("a", read), await memory.once("a", read)]).toEqual([1, 1]);
  memory.forget();
  expect(await memory.once("a", read)).toBe(2);
  await expect(memory.once("b", () => Promise.reject(new Error("gone")))).rejects.toThrow("gone");
  expect(await memory.once("b", read)).toBe(3);
});

it("does not keep what was read before a write for those who ask after it", async () => {
  const memory = remembered();
  let release = (): void => undefined;
  const slow = memory.once("a", () => new Promise<string>((resolve) => (release = () => resolve("old"))));
  memory.forget();
  const fresh = memory.once("a", () => Promise.resolve("new"));
  release();
  expect([await slow, await fresh]).toEqual(["old", "new"]);
});
