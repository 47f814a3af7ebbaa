import { expect, test } from "vitest";
import { chiSquareUpper } from "../../../src/estimate/numeric/chiSquareUpper.js";
import { closedForm, closedFormCases } from "../closedForm.js";
import { faultCode } from "../faultCode.js";
import { expectNear } from "../reference.js";

test.each(closedFormCases("pchisq "))("%s by R's pchisq", (name) => {
  const [x, df] = name.split(" ").map(Number) as [number, number];
  expectNear([chiSquareUpper(x, df)], closedForm(`pchisq ${name}`), 1e-11);
});

test("0 and errors", () => {
  expect(chiSquareUpper(0, 3)).toBe(1);
  expect(chiSquareUpper(1e5, 3)).toBe(0);
  expect(faultCode(() => chiSquareUpper(-1, 3))).toBe("out_of_range");
});

// R 4.2.2, pchisq(x, df, lower.tail = FALSE) at so many standard deviations from the mean; its far tail keeps ten digits.
test.each([
  [2e4, 3, 0.00147049489638568, 1e-12],
  [2e4, 30, 4.71234717748564e-166, 1e-10],
  [1e6, -0.5, 0.691337983718194, 1e-13],
  [1e9, 0, 0.499994052919613, 1e-13],
  [1e10, 0.5, 0.308536293989701, 1e-13],
  [1e12, -3, 0.998650118681914, 1e-13],
  [1e14, 0, 0.499999981193681, 1e-13],
  [1e14, 3, 0.0013498997017922, 1e-13],
  [1e14, 30, 4.91296301638996e-198, 1e-10],
])("%d degrees of freedom, %d standard deviations out", (df, z, wanted, tolerance) => {
  expectNear([chiSquareUpper(df + z * Math.sqrt(2 * df), df)], [wanted], tolerance);
});

test("far out at many degrees of freedom", () => {
  expect([chiSquareUpper(2e5, 1e5), chiSquareUpper(5e4, 1e5)]).toEqual([0, 1]);
});
