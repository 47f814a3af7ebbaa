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
