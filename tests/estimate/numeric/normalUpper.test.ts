import { expect, test } from "vitest";
import { normalUpper } from "../../../src/estimate/numeric/normalUpper.js";
import { closedForm, closedFormCases } from "../closedForm.js";
import { faultCode } from "../faultCode.js";
import { expectNear } from "../reference.js";

test.each(closedFormCases("pnorm "))("%s by R's pnorm", (name) => {
  const [z] = name.split(" ").map(Number) as [number];
  expectNear([normalUpper(z)], closedForm(`pnorm ${name}`), 1e-12);
});

test("far tails are 0 and 1, and NaN is refused", () => {
  expect([normalUpper(50), normalUpper(-50)]).toEqual([0, 1]);
  expect(faultCode(() => normalUpper(NaN))).toBe("not_a_number");
});
