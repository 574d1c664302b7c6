/** `test` of the walks: skips where there is no Chromium; fails when a page throws, breaks its policy or asks another host. */
import path from "node:path";
import { fileURLToPath } from "node:url";
import { test as base } from "@playwright/test";
import type { Page } from "@playwright/test";
import { chromiumPath, noChromium } from "./chromium.js";

export { expect } from "@playwright/test";

const setting = (name: string): string => process.env[name] ?? "";
export const demoUrl = setting("STIPULE_WALKS_DEMO");
export const emptyUrl = setting("STIPULE_WALKS_EMPTY");
export const home = setting("STIPULE_WALKS_HOME");

/** Folder of open data that is not part of the project; tests that need it say so and are skipped where it is absent. */
export const sharedData = path.join(
  process.env["STIPULE_SHARED"] ?? path.join(fileURLToPath(new URL("../../..", import.meta.url)), "..", "shared"),
  "data",
);

/** Answers of the server with a problem are part of the walks; Chromium writes each into the console. */
const expected = /^Failed to load resource: /;

/** What a page must never do, collected while it is used. */
export const watchFaults = (page: Page): string[] => {
  const faults: string[] = [];
  page.on("pageerror", (error) => faults.push(`threw: ${error.message}`));
  page.on("console", (message) => {
    if (message.type() === "error" && !expected.test(message.text())) faults.push(`console: ${message.text()}`);
  });
  page.on("request", (request) => {
    if (!/^(https?:\/\/(localhost|127\.0\.0\.1):|blob:|data:|file:)/.test(request.url())) faults.push(`asked ${request.url()}`);
  });
  return faults;
};

export const test = base.extend<{ readonly chromiumThere: undefined }>({
  chromiumThere: [
    // oxlint-disable-next-line no-empty-pattern -- the runner reads the names of fixtures from the pattern
    async ({}, use, info) => {
      info.skip(chromiumPath === undefined, noChromium);
      await use(undefined);
    },
    { auto: true },
  ],
  page: async ({ page }, use) => {
    const faults = watchFaults(page);
    await use(page);
    base.expect(faults, "faults of the page").toEqual([]);
  },
});
