import { expect, test } from "vitest";
import { shortDate } from "../../../src/answer/words/shortDate.js";

test("a date short enough for a table", () => {
  expect(shortDate("2026-03-05")).toBe("5 Mar 2026");
  expect(shortDate("2025-09-30")).toBe("30 Sep 2025");
});
