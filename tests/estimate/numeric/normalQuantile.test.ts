import { expect, test } from "vitest";
import { normalQuantile } from "../../../src/estimate/numeric/normalQuantile.js";
import { closedForm, closedFormCases } from "../closedForm.js";
import { faultCode } from "../faultCode.js";
import { expectNear } from "../reference.js";

test.each(closedFormCases("qnorm "))("%s by R's qnorm", (name) => {
  const [p] = name.split(" ").map(Number) as [number];
  expectNear([normalQuantile(p)], closedForm(`qnorm ${name}`), 1e-12);
});

test("ends and errors", () => {
  expect([normalQuantile(0), normalQuantile(1)]).toEqual([-Infinity, Infinity]);
  expect(faultCode(() => normalQuantile(1.1))).toBe("out_of_range");
  expect(faultCode(() => normalQuantile(NaN))).toBe("not_a_number");
});
