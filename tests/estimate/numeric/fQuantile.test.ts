import { expect, test } from "vitest";
import { fQuantile } from "../../../src/estimate/numeric/fQuantile.js";
import { closedForm, closedFormCases } from "../closedForm.js";
import { faultCode } from "../faultCode.js";
import { expectNear } from "../reference.js";

test.each(closedFormCases("qf "))("%s by R's qf", (name) => {
  const [p, df1, df2] = name.split(" ").map(Number) as [number, number, number];
  // qf itself loses digits for small values: 5 x / (1 - x) with x = qbeta(0.001, 0.5, 2.5) is 2e-10 off it.
  expectNear([fQuantile(p, df1, df2)], closedForm(`qf ${name}`), 1e-9);
});

test("errors", () => {
  expect(faultCode(() => fQuantile(2, 3, 4))).toBe("out_of_range");
  expect(faultCode(() => fQuantile(0.5, 0, 4))).toBe("out_of_range");
});
