import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { describe as describeNumbers } from "../../src/estimate/describe.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

/** A NIST StRD univariate file: its numbers and its certified mean and standard deviation. */
export function certified(name: string) {
  const text = readFileSync(`${import.meta.dirname}/../reference/nist/${name}.dat`, "utf8");
  const value = (label: RegExp) => Number(new RegExp(`${label.source}[^:]*:\\s*(-?[\\d.]+)`).exec(text)![1]);
  const values = text
    .split(/Data: *Y\r?\n-+\r?\n/)[1]!
    .trim()
    .split(/\s+/)
    .map(Number);
  return { values, mean: value(/Sample Mean/), sd: value(/Sample Standard Deviation/), lag1: value(/Sample Autocorrelation/) };
}

const digits = (found: number, wanted: number) =>
  found === wanted ? 15 : -Math.log10(Math.abs(found - wanted) / Math.abs(wanted));

// NIST StRD univariate sets, certified values read from the files themselves. 0.1 has no exact double, so the last two cannot be met
// with more digits than about 9.5 and 8.3: R 4.2.2 sd() gets 0.100000000034925 and 0.100000000558794.
test.each([
  ["Lew", 200, 14, 14],
  ["Lottery", 218, 14, 14],
  ["NumAcc3", 1001, 14, 9],
  ["NumAcc4", 1001, 14, 8],
])("%s to so many digits", (name, n, meanDigits, sdDigits) => {
  const { values, mean, sd } = certified(name);
  const found = describeNumbers(values);
  expect(found.n).toBe(n);
  expect(digits(found.mean, mean)).toBeGreaterThanOrEqual(meanDigits);
  expect(digits(found.sd!, sd)).toBeGreaterThanOrEqual(sdDigits);
});

test("toe lengths by R's mean, sd and quantile (type 7)", () => {
  const r = describeNumbers([81.5, 78, 90.25, null, 84, 84, 76.5, 101, 88.75, 79.5]);
  expectNear([r.mean, r.sd, r.min, r.q1, r.median, r.q3, r.max], closedForm("toes"), 1e-14);
  expect([r.n, r.missing]).toEqual([9, 1]);
});

test("order does not matter and the input is left alone", () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 40 }), (values) => {
      const before = [...values];
      const r = describeNumbers(values);
      expect(values).toEqual(before);
      expect(r.min <= r.q1 && r.q1 <= r.median && r.median <= r.q3 && r.q3 <= r.max).toBe(true);
      expect(describeNumbers([...values].reverse()).median).toBe(r.median);
    }),
  );
});

test("one value has no standard deviation; none, NaN and blanks are refused", () => {
  expect(describeNumbers([4, null]).sd).toBeNull();
  expect(describeNumbers([4, 6]).sd).toBeCloseTo(Math.SQRT2, 14);
  expect(faultCode(() => describeNumbers([]))).toBe("empty");
  expect(faultCode(() => describeNumbers([null, null]))).toBe("empty");
  expect(faultCode(() => describeNumbers([1, NaN]))).toBe("not_a_number");
  expect(faultCode(() => describeNumbers([1, "" as unknown as number]))).toBe("not_a_number");
});
