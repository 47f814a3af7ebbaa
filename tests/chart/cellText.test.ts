import fc from "fast-check";
import { expect, test } from "vitest";
import { cellText } from "../../src/chart/cellText.js";

test("missing, yes and no, words", () => {
  expect(cellText(null, { digits: 2 })).toBe("–");
  expect(cellText(true, {})).toBe("yes");
  expect(cellText(false, {})).toBe("no");
  expect(cellText("Brook Farm", { percent: true })).toBe("Brook Farm");
});

test("numbers with the digits of their column, and no trailing noise without", () => {
  expect(cellText(12.345, { digits: 1 })).toBe("12.3");
  expect(cellText(0.1 + 0.2, {})).toBe("0.3");
  expect(cellText(1204, { digits: 0 })).toBe("1204");
  expect(cellText(1204567.5, { digits: 1 })).toBe("1,204,567.5");
  expect(cellText(-3.04, { digits: 1 })).toBe("−3.0");
  expect(cellText(-0.04, { digits: 1 })).toBe("0.0");
  expect(cellText(1e-9, {})).toBe("1e-9");
  expect(cellText(Infinity, { digits: 1 })).toBe("∞");
});

test("a percentage never says certain unless it is", () => {
  expect(cellText(0, { percent: true })).toBe("0%");
  expect(cellText(1, { percent: true })).toBe("100%");
  expect(cellText(0.004, { percent: true })).toBe("<1%");
  expect(cellText(0.9999, { percent: true, digits: 1 })).toBe(">99.9%");
  fc.assert(
    fc.property(fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true }), fc.integer({ min: 0, max: 4 }), (share, digits) => {
      expect(cellText(share, { percent: true, digits })).not.toMatch(/^(0(\.0+)?|100(\.0+)?)%$/);
    }),
  );
});

test("NaN is refused", () => {
  expect(() => cellText(NaN, {})).toThrow(RangeError);
});

test("a p value is never printed as 0", () => {
  const column = { digits: 4, p: true };
  expect([0, 1e-9, 0.000099, 0.0001, 0.0312].map((value) => cellText(value, column))).toEqual([
    "<0.0001",
    "<0.0001",
    "<0.0001",
    "0.0001",
    "0.0312",
  ]);
});
