import { expect, test } from "vitest";
import { tUpper } from "../../../src/estimate/numeric/tUpper.js";
import { closedForm, closedFormCases } from "../closedForm.js";
import { faultCode } from "../faultCode.js";
import { expectNear } from "../reference.js";

test.each(closedFormCases("pt "))("%s by R's pt", (name) => {
  const [t, df] = name.split(" ").map(Number) as [number, number];
  expectNear([tUpper(t, df)], closedForm(`pt ${name}`), 1e-10);
});

test("NaN is refused, and no degrees of freedom", () => {
  expect(faultCode(() => tUpper(NaN, 3))).toBe("not_a_number");
  expect(faultCode(() => tUpper(1, 0))).toBe("out_of_range");
});
