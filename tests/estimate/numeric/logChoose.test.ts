import { expect, test } from "vitest";
import { logChoose } from "../../../src/estimate/numeric/logChoose.js";
import { closedForm, closedFormCases } from "../closedForm.js";
import { faultCode } from "../faultCode.js";
import { expectNear } from "../reference.js";

test.each(closedFormCases("lchoose "))("%s by R's lchoose", (name) => {
  const [n, k] = name.split(" ").map(Number) as [number, number];
  expectNear([logChoose(n, k)], closedForm(`lchoose ${name}`), 1e-12);
});

test("more than there are, and halves", () => {
  expect(logChoose(3, 4)).toBe(-Infinity);
  expect(faultCode(() => logChoose(3, 0.5))).toBe("not_a_count");
});
