import { expect, test } from "vitest";
import { EstimateError } from "../../src/estimate/EstimateError.js";
import { StudyError } from "../../src/study/StudyError.js";

test("it is caught as a study error, and keeps its own name, code, message and hint", () => {
  const fault = new EstimateError("empty", "Nothing was examined.", "Give at least one observation.");
  expect(fault).toBeInstanceOf(StudyError);
  expect(fault).toBeInstanceOf(Error);
  expect([fault.name, fault.code, fault.message, fault.hint]).toEqual([
    "EstimateError",
    "empty",
    "Nothing was examined.",
    "Give at least one observation.",
  ]);
});
