import { expect, test } from "vitest";
import { fUpper } from "../../../src/estimate/numeric/fUpper.js";
import { closedForm, closedFormCases } from "../closedForm.js";
import { faultCode } from "../faultCode.js";
import { expectNear } from "../reference.js";

test.each(closedFormCases("pf "))("%s by R's pf", (name) => {
  const [f, df1, df2] = name.split(" ").map(Number) as [number, number, number];
  expectNear([fUpper(f, df1, df2)], closedForm(`pf ${name}`), 1e-10);
});

test("0 and errors", () => {
  expect(fUpper(0, 3, 4)).toBe(1);
  expect(faultCode(() => fUpper(-1, 3, 4))).toBe("out_of_range");
});
