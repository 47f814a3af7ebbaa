import { expect, test } from "vitest";
import { NotebookError } from "../../src/run/NotebookError.js";
import { StudyError } from "../../src/study/StudyError.js";

test("what is not known is null, and whoever catches StudyError catches it too", () => {
  const error = new NotebookError("kernel_not_started", "It could not start.", "Run it again.");
  expect(error).toBeInstanceOf(StudyError);
  expect(error).toMatchObject({
    name: "NotebookError",
    code: "kernel_not_started",
    message: "It could not start.",
    hint: "Run it again.",
  });
  expect([error.cell, error.kernelMessage, error.notebook]).toEqual([null, null, null]);
});
