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

// R 4.2.2: pbeta(0.5, k + d, k + 1) and pbeta(0.1, k, 9 * k + 1), printed to 14 digits; R itself is good for about 12 there.
test.each([
  [1e5, 10, 0.49197218738087, 0.50048759607565],
  [1e6, 300, 0.41628404223624, 0.50015419143052],
  [1e7, 10, 0.49919714489372, 0.50004875961195],
  [1e9, 10, 0.49991971441552, 0.50000487596152],
  [1e12, 2e6, 0.07864981107896, 0.5000001542325],
])("shapes about %d", (k, d, wanted, tenth) => {
  expectNear([betaCumulative(0.5, k + d, k + 1), betaCumulative(0.1, k, 9 * k + 1)], [wanted, tenth], 2e-9);
  expectNear([betaCumulative(0.5, k + 1, k + d)], [1 - wanted], 2e-9);
});

// R 4.2.2: pbeta(1e-120, 0.0109, 1741906.135), pbeta(1e-15, 0.25, 4e5).
test("so near 0 that 1 less it is 1", () => {
  const found = [betaCumulative(1e-120, 0.0109, 1741906.135), betaCumulative(1e-15, 0.25, 4e5)];
  expectNear(found, [0.0579051756363733, 0.00493393941399294], 1e-9);
});

// R 4.2.2: pbeta(x, 1, 1e6) = 1 - (1 - x)^1e6.
test("a small shape beside a large one", () => {
  expectNear(
    [betaCumulative(2e-6, 1, 1e6), betaCumulative(1 - 2e-6, 1e6, 1)],
    [-Math.expm1(1e6 * Math.log1p(-2e-6)), Math.exp(1e6 * Math.log1p(-2e-6))],
    1e-9,
  );
});
