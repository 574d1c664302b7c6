import { defineConfig } from "@playwright/test";
import { chromiumArgs, chromiumPath } from "./tests/browser/support/chromium.js";

/** Walks through the real page with the real server, in the system's Chromium; see tests/browser/support/setup.ts. */
// oxlint-disable-next-line import/no-default-export -- what the test runner loads
export default defineConfig({
  testDir: "tests/browser",
  globalSetup: "./tests/browser/support/setup.ts",
  // One book is walked through by one person.
  workers: 1,
  fullyParallel: false,
  forbidOnly: process.env["CI"] !== undefined,
  timeout: 90_000,
  globalTimeout: 15 * 60_000,
  expect: { timeout: 15_000 },
  reporter: [["list"], ["./tests/support/walks-closing-line.ts"]],
  outputDir: "test-results",
  use: {
    viewport: { width: 1280, height: 900 },
    contextOptions: { reducedMotion: "reduce" },
    locale: "en-GB",
    launchOptions: { args: chromiumArgs, ...(chromiumPath === undefined ? {} : { executablePath: chromiumPath }) },
    screenshot: "only-on-failure",
  },
});
