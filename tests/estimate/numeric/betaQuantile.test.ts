import { expect, test } from "vitest";
import { betaQuantile } from "../../../src/estimate/numeric/betaQuantile.js";
import { closedForm, closedFormCases } from "../closedForm.js";
import { faultCode } from "../faultCode.js";
import { expectNear } from "../reference.js";

test.each(closedFormCases("qbeta "))("%s by R's qbeta", (name) => {
  const [p, a, b] = name.split(" ").map(Number) as [number, number, number];
  expectNear([betaQuantile(p, a, b)], closedForm(`qbeta ${name}`), 1e-10);
});

// R 4.2.2: qbeta(0.025, 1, 1e6), qbeta(1e-12, 1e5, 1e5). Large shapes cost digits, as the doc comment says.
test("far tails (qbeta(2e-12, 200, 0.5)), very small and very narrow", () => {
  expectNear([betaQuantile(2e-12, 200, 0.5)], [0.8835008362173641], 1e-12);
  expectNear([betaQuantile(0.025, 1, 1e6), betaQuantile(1e-12, 1e5, 1e5)], [2.53178076637942e-8, 0.492135684612301], 1e-9);
});

test("a value too small for a number is 0", () => {
  expect(betaQuantile(0.025, 0.001, 3)).toBeLessThan(1e-20);
});

// R 4.2.2, qbeta(p, a, b).
test.each([
  [5e-5, 0.2, 20000, 1.01962677422372e-26],
  [5e-5, 0.28, 1e5, 2.99915052405363e-21],
  [0.05, 0.0438, 15297.946, 7.51862555080807e-35],
])("%d of shapes %d and %d, next to 0", (p, a, b, wanted) => {
  expectNear([betaQuantile(p, a, b) / wanted], [1], 1e-8);
});

test("next to the least of numbers, where cephes reports digits lost", () => {
  // R 4.2.2 stops at 5.6e-309; the power law a B(a, b) p = x^a gives less than that.
  expect(betaQuantile(0.025, 0.005, 1.25)).toBeLessThan(1e-307);
});

test("ends and errors", () => {
  expect([betaQuantile(0, 2, 3), betaQuantile(1, 2, 3)]).toEqual([0, 1]);
  expect(faultCode(() => betaQuantile(0.5, 0, 3))).toBe("out_of_range");
});
