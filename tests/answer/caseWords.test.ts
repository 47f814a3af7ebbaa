import { expect, test } from "vitest";
import { caseWords } from "../../src/answer/caseWords.js";

test("the case definition in words", () => {
  expect(caseWords({ caseGrade: 1 })).toBe("grade 1 or more on the project scale");
  expect(caseWords({ caseGrade: 3 })).toBe("grade 3 on the project scale");
});
