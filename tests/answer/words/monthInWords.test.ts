import { expect, test } from "vitest";
import { monthInWords } from "../../../src/answer/words/monthInWords.js";

test("a month as people say it", () => {
  expect(monthInWords("2026-03")).toBe("March 2026");
  expect(monthInWords("2025-11")).toBe("November 2025");
});
