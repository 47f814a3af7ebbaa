import { expect, test } from "vitest";
import { misclassifiedOddsRatio } from "../../src/estimate/misclassifiedOddsRatio.js";
import { climateReference } from "./climateReference.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

const table = { a: 60, b: 140, c: 25, d: 155 };

// R 4.2.2 with numDeriv: delta method on the two proportions called cases.
test("sensitivity 0.9, specificity 0.95", () => {
  const found = misclassifiedOddsRatio(table, { sensitivity: 0.9, specificity: 0.95 });
  expectNear([found.estimate, found.lower, found.upper], climateReference("misclassified table", "odds ratio"), 1e-8);
  expectNear([found.apparent], [(60 * 155) / (140 * 25)], 1e-14);
});

test("there and back: a true table, misclassified by hand, is found again", () => {
  // 100 of 200 and 40 of 200 true cases; sensitivity 0.8 and specificity 0.9 call 80 + 10 and 32 + 16 cases.
  const { corrected, estimate } = misclassifiedOddsRatio(
    { a: 90, b: 110, c: 48, d: 152 },
    { sensitivity: 0.8, specificity: 0.9 },
  );
  expectNear([corrected!.a, corrected!.b, corrected!.c, corrected!.d, estimate], [100, 100, 40, 160, 4], 1e-10);
});

test("values that cannot have produced the counts give none, and say which could", () => {
  const found = misclassifiedOddsRatio(table, { sensitivity: 0.9, specificity: 0.8 });
  expect([found.estimate, found.corrected]).toEqual([null, null]);
  expect(found.note).toMatch(/13\.9 % of the unexposed .* specificity above 0\.8611/);
  expect(faultCode(() => misclassifiedOddsRatio(table, { sensitivity: 0.5, specificity: 0.5 }))).toBe("out_of_range");
});
