/** Ends a run of the browser walks with one plain line that any CI can read: `N passed, N failed, N skipped`. */
import type { FullResult, Reporter, Suite } from "@playwright/test/reporter";

class WalksClosingLine implements Reporter {
  private suite: Suite | undefined;

  onBegin(_config: unknown, suite: Suite): void {
    this.suite = suite;
  }

  onEnd(result: FullResult): void {
    const counts = { passed: 0, failed: 0, skipped: 0 };
    for (const test of this.suite?.allTests() ?? []) {
      const outcome = test.outcome();
      if (outcome === "skipped") counts.skipped += 1;
      else if (outcome === "unexpected") counts.failed += 1;
      else counts.passed += 1;
    }
    // A run that broke before its tests (the setup, a file that does not load) has failed all the same.
    if (result.status !== "passed" && counts.failed === 0) counts.failed += 1;
    console.log(`${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`);
  }

  printsToStdio(): boolean {
    return false;
  }
}

// oxlint-disable-next-line import/no-default-export -- what the test runner loads
export default WalksClosingLine;
