import { expect, test } from "vitest";
import { howSure } from "../../../src/answer/words/howSure.js";

test("a proportion says how sure it is", () => {
  expect(howSure({ estimate: 0.37, lower: 0.3, upper: 0.45, level: 0.95 })).toBe("37% (95% interval 30% to 45%)");
  expect(howSure({ estimate: 0.5, lower: null, upper: null, level: 0.95 })).toBe("50% (too little for an interval)");
});
