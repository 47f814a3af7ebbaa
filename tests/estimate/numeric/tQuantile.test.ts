import { expect, test } from "vitest";
import { tQuantile } from "../../../src/estimate/numeric/tQuantile.js";
import { closedForm, closedFormCases } from "../closedForm.js";
import { faultCode } from "../faultCode.js";
import { expectNear } from "../reference.js";

test.each(closedFormCases("qt "))("%s by R's qt", (name) => {
  const [p, df] = name.split(" ").map(Number) as [number, number];
  expectNear([tQuantile(p, df)], closedForm(`qt ${name}`), 1e-10);
});

test("the middle, the ends, symmetry and errors", () => {
  expect([tQuantile(0.5, 3), tQuantile(0, 3), tQuantile(1, 3)]).toEqual([0, -Infinity, Infinity]);
  expectNear([tQuantile(0.1, 7)], [-tQuantile(0.9, 7)], 1e-13);
  expect(faultCode(() => tQuantile(0.9, 0))).toBe("out_of_range");
});
