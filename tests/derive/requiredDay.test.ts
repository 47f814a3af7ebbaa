import { expect, test } from "vitest";
import { requiredDay } from "../../src/derive/requiredDay.js";

test("a date that is none is named in the error", () => {
  expect(requiredDay("1970-01-02")).toBe(1);
  expect(() => requiredDay("2025-02-29")).toThrow('"2025-02-29" is no calendar day.');
});
