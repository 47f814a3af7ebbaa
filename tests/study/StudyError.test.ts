import { expect, test } from "vitest";
import { StudyError } from "../../src/study/StudyError.js";

test("carries what was found and what to do", () => {
  const fault = new StudyError("no_folder", "There is no such folder.", "Check the path.");
  expect(fault).toBeInstanceOf(Error);
  expect(fault).toMatchObject({
    name: "StudyError",
    code: "no_folder",
    message: "There is no such folder.",
    hint: "Check the path.",
  });
});
