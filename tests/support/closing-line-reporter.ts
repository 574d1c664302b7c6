/** Ends a run with one plain line that any CI can read: `N passed, N failed, N skipped`. */
import type { Reporter, TestModule } from "vitest/node";

export const closingLineReporter: Reporter = {
  onTestRunEnd(modules: readonly TestModule[]) {
    const counts = { passed: 0, failed: 0, skipped: 0 };
    for (const module of modules) {
      for (const test of module.children.allTests()) {
        const state = test.result().state;
        if (state !== "pending") counts[state] += 1;
      }
      if (module.state() === "failed" && counts.failed === 0) counts.failed += 1;
    }
    console.log(`${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`);
  },
};
