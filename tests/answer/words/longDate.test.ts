import { expect, test } from "vitest";
import { longDate } from "../../../src/answer/words/longDate.js";

test("a date as people say it", () => {
  expect(longDate("2026-03-05")).toBe("5 March 2026");
  expect(longDate("2024-12-31")).toBe("31 December 2024");
});
