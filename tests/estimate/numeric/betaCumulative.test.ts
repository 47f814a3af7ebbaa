import { expect, test } from "vitest";
import { betaCumulative } from "../../../src/estimate/numeric/betaCumulative.js";
import { closedForm, closedFormCases } from "../closedForm.js";
import { faultCode } from "../faultCode.js";
import { expectNear } from "../reference.js";

test.each(closedFormCases("pbeta "))("%s by R's pbeta", (name) => {
  const [x, a, b] = name.split(" ").map(Number) as [number, number, number];
  expectNear([betaCumulative(x, a, b)], closedForm(`pbeta ${name}`), 1e-11);
});

test("a shape of 0 puts all at its end", () => {
  expect([betaCumulative(0.4, 0, 3), betaCumulative(0.4, 3, 0), betaCumulative(1, 3, 0)]).toEqual([1, 0, 1]);
  expect(faultCode(() => betaCumulative(1.4, 2, 3))).toBe("out_of_range");
});
