import { expect, test } from "vitest";
import { logFactorial } from "../../../src/estimate/numeric/logFactorial.js";
import { closedForm, closedFormCases } from "../closedForm.js";
import { faultCode } from "../faultCode.js";
import { expectNear } from "../reference.js";

test.each(closedFormCases("lfactorial "))("%s by R's lfactorial", (name) => {
  const [n] = name.split(" ").map(Number) as [number];
  expectNear([logFactorial(n)], closedForm(`lfactorial ${name}`), 1e-14);
});

test("halves are refused", () => {
  expect(faultCode(() => logFactorial(2.5))).toBe("not_a_count");
});
