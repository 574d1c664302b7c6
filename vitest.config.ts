import { defineConfig } from "vitest/config";
import { closingLineReporter } from "./tests/support/closing-line-reporter.js";

const shared = { pool: "threads" as const, testTimeout: 60_000 };

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
