import { expect, test } from "vitest";
import { tUpper } from "../../../src/estimate/numeric/tUpper.js";
import { closedForm, closedFormCases } from "../closedForm.js";
import { faultCode } from "../faultCode.js";
import { expectNear } from "../reference.js";

test.each(closedFormCases("pt "))("%s by R's pt", (name) => {
  const [t, df] = name.split(" ").map(Number) as [number, number];
  expectNear([tUpper(t, df)], closedForm(`pt ${name}`), 1e-10);
});

// R 4.2.2: pt(t, df, lower.tail = FALSE).
test("next to the middle, with many degrees of freedom", () => {
  expectNear(
    [tUpper(1.6e-5, 6261590.8), tUpper(-2e-4, 1e5), tUpper(0.5, 7)],
    [0.4999936169237687, 0.5000797882560775, 0.3162035678446421],
    1e-11,
  );
});

test("NaN is refused, and no degrees of freedom", () => {
  expect(faultCode(() => tUpper(NaN, 3))).toBe("not_a_number");
  expect(faultCode(() => tUpper(1, 0))).toBe("out_of_range");
});
