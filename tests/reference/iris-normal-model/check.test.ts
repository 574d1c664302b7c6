import { existsSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { irisExpected, irisPath, leaveOneOut } from "./leave-one-out.js";

describe(`irises left out one by one, as ${irisExpected.program} GaussianNB`, () => {
  it.skipIf(!existsSync(irisPath))(
    `gives the same probabilities, right names and log loss${existsSync(irisPath) ? "" : ` (skipped: ${irisPath} is absent)`}`,
    () => {
      const { own, correct, logLoss } = leaveOneOut();
      expect(own).toHaveLength(irisExpected.of);
      own.forEach((chance, i) => expect(Math.abs(chance - irisExpected.ofTheTrueSpecies[i]!), `row ${i}`).toBeLessThan(1e-9 * chance));
      expect(correct).toBe(irisExpected.correct);
      expect(Math.abs(logLoss - irisExpected.logLoss)).toBeLessThan(1e-9);
    },
  );
});
