import { expect, test } from "vitest";
import { chiSquareQuantile } from "../../../src/estimate/numeric/chiSquareQuantile.js";
import { closedForm, closedFormCases } from "../closedForm.js";
import { faultCode } from "../faultCode.js";
import { expectNear } from "../reference.js";

test.each(closedFormCases("qchisq "))("%s by R's qchisq", (name) => {
  const [p, df] = name.split(" ").map(Number) as [number, number];
  // 1 - p is what is inverted, so digits go below p = 1e-6.
  expectNear([chiSquareQuantile(p, df)], closedForm(`qchisq ${name}`), Math.max(1e-12, 3e-16 / p));
});

// R 4.2.2, qchisq(p, df).
test.each([
  [0.5, 1e5, 99999.3333341235],
  [0.975, 1e5, 100878.415305666],
  [0.025, 1e7, 9991236.6690539],
  [0.025, 1e9, 999912349.640264],
  [0.975, 1e9, 1000087654.14835],
])("%d of %d degrees of freedom", (p, df, wanted) => {
  expectNear([chiSquareQuantile(p, df)], [wanted], 1e-14);
});

// R 4.2.2, qchisq(p, df).
test.each([
  [0.975, 14970, 15311.0263871182],
  [0.5, 17774.68, 17774.0133377787],
  [3e-9, 9, 0.0618680868299682],
  [0.05, 6879, 6687.21141669271],
])("%d of %d degrees of freedom, where cephes gives up", (p, df, wanted) => {
  expectNear([chiSquareQuantile(p, df)], [wanted], Math.max(1e-12, 3e-16 / p));
});

test("ends and errors", () => {
  expect([chiSquareQuantile(0, 3), chiSquareQuantile(1, 3)]).toEqual([0, Infinity]);
  expect(faultCode(() => chiSquareQuantile(0.5, -1))).toBe("out_of_range");
});
