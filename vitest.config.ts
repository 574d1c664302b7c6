import { defineConfig } from "vitest/config";
import { closingLineReporter } from "./tests/support/closing-line-reporter.js";

/** Generous: a busy machine may be slow to write and to remove folders; nothing is measured by these. */
const shared = { pool: "threads" as const, testTimeout: 60_000, hookTimeout: 120_000 };

export default defineConfig({
  test: {
    reporters: ["default", closingLineReporter],
    projects: [
      { test: { ...shared, name: "unit", isolate: false, include: ["src/**/*.test.ts"] } },
      { test: { ...shared, name: "reference", isolate: false, include: ["tests/reference/**/*.test.ts"] } },
      { test: { ...shared, name: "integration", isolate: true, testTimeout: 180_000, include: ["tests/integration/**/*.test.ts"] } },
    ],
  },
});
