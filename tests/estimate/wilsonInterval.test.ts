import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { wilsonInterval } from "../../src/estimate/wilsonInterval.js";
import { closedForm, closedFormCases } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// Newcombe 1998, Stat Med 17:857-872, Table I (methods 3 and 4) has the first four; digits from R 4.2.2, prop.test(81, 263, correct =
// FALSE) and correct = TRUE. prop.test weakens its correction when cases lie within half a case of n/2; none here does.
// prettier-ignore
const table = [
  [81, 263, 0.2552885199, 0.3662095770, 0.2535086823, 0.3681762010],
  [15, 148, 0.0623863995, 0.1604872417, 0.0597782084, 0.1644497794],
  [0, 20, 0, 0.1611251581, 0, 0.2004533450],
  [1, 29, 0.0061132143, 0.1717552188, 0.0018026402, 0.1962817510],
  [20, 20, 0.8388748419, 1, 0.7995466550, 1],
  [29, 29, 0.8830302015, 1, 0.8543835244, 1],
  [0, 1, 0, 0.7934506856, 0, 0.9453792445],
  [1, 1, 0.2065493144, 1, 0.0546207555, 1],
  [12, 100, 0.0699940644, 0.1981209943, 0.0662515292, 0.2039771841],
  [7, 34, 0.1034952690, 0.3679838805, 0.0933761645, 0.3840741687],
] as const;

describe("limits", () => {
  test.each(table)("%d of %d as published and by R", (cases, n, lower, upper, lowerCorrected, upperCorrected) => {
    const plain = wilsonInterval(cases, n);
    const corrected = wilsonInterval(cases, n, { continuity: true });
    // Ten printed decimals.
    expect(plain.lower).toBeCloseTo(lower, 9);
    expect(plain.upper).toBeCloseTo(upper, 9);
    expect(corrected.lower).toBeCloseTo(lowerCorrected, 9);
    expect(corrected.upper).toBeCloseTo(upperCorrected, 9);
  });

  test.each(closedFormCases("wilson corrected "))("%s at other levels by R", (name) => {
    const [cases, n, level] = name.split(/[/ ]/).map(Number) as [number, number, number];
    const plain = wilsonInterval(cases, n, { level });
    const corrected = wilsonInterval(cases, n, { level, continuity: true });
    expectNear([plain.lower, plain.upper], closedForm(`wilson ${name}`), 1e-12);
    expectNear([corrected.lower, corrected.upper], closedForm(`wilson corrected ${name}`), 1e-12);
  });

  // Wilson limits of published prevalences, by R: prop.test(424, 942, correct = FALSE) and so on.
  test.each([
    [424, 942, 0.4186, 0.482],
    [204, 1781, 0.1006, 0.1302],
    [29, 94, 0.2242, 0.4079],
    [13, 20, 0.4329, 0.8188],
  ])("%d of %d", (cases, n, lower, upper) => {
    const interval = wilsonInterval(cases, n);
    expect(interval.lower).toBeCloseTo(lower, 4);
    expect(interval.upper).toBeCloseTo(upper, 4);
  });

  test("without cases the upper limit is z^2 / (n + z^2)", () => {
    const z2 = 1.959963984540054 ** 2;
    expectNear([wilsonInterval(0, 37).upper], [z2 / (37 + z2)], 1e-14);
  });
});

const counts = fc.integer({ min: 1, max: 5000 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
const levels = fc.double({ min: 0.01, max: 0.9999, noNaN: true });

describe("for any counts", () => {
  test("limits hold the estimate, stay within 0 and 1 and leave a width", () => {
    fc.assert(
      fc.property(counts, levels, fc.boolean(), ([cases, n], level, continuity) => {
        const { estimate, lower, upper } = wilsonInterval(cases, n, { level, continuity });
        expect(lower).toBeGreaterThanOrEqual(0);
        expect(lower).toBeLessThanOrEqual(estimate);
        expect(upper).toBeGreaterThanOrEqual(estimate);
        expect(upper).toBeLessThanOrEqual(1);
        expect(upper).toBeGreaterThan(lower);
      }),
    );
  });

  test("a higher level is wider, and counting the others instead mirrors the limits", () => {
    fc.assert(
      fc.property(counts, levels, fc.boolean(), ([cases, n], level, continuity) => {
        const narrow = wilsonInterval(cases, n, { level: level * 0.9, continuity });
        const wide = wilsonInterval(cases, n, { level, continuity });
        expect(wide.lower).toBeLessThanOrEqual(narrow.lower);
        expect(wide.upper).toBeGreaterThanOrEqual(narrow.upper);
        const mirror = wilsonInterval(n - cases, n, { level, continuity });
        expect(mirror.lower).toBeCloseTo(1 - wide.upper, 12);
        expect(mirror.upper).toBeCloseTo(1 - wide.lower, 12);
      }),
    );
  });
});

describe("what no proportion can come from", () => {
  test.each([
    [0, 0, "empty"],
    [1, 0, "empty"],
    [3, 2, "out_of_range"],
    [-1, 5, "not_a_count"],
    [1.5, 5, "not_a_count"],
    [1, 5.5, "not_a_count"],
    [NaN, 5, "not_a_number"],
    [1, NaN, "not_a_number"],
    [1, Infinity, "not_a_number"],
  ])("%d of %d is %s", (cases, n, code) => {
    expect(faultCode(() => wilsonInterval(cases, n))).toBe(code);
  });

  test.each([0, 1, 95, -0.5])("level %d is out of range", (level) => {
    expect(faultCode(() => wilsonInterval(1, 5, { level }))).toBe("out_of_range");
  });

  test("null that slipped past the types is refused, not read as 0", () => {
    expect(faultCode(() => wilsonInterval(null as unknown as number, 5))).toBe("not_a_number");
  });
});
