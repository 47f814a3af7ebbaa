import { expect, test } from "vitest";
import { heldEqualWords } from "../../../src/answer/climate/heldEqualWords.js";

test("columns in words; those that are words already stay", () => {
  expect(heldEqualWords([])).toBe("nothing");
  expect(heldEqualWords(["season of visitDate (2 waves)", "end", "observerId", "ground"])).toBe(
    "season (2 waves), front or hind, observer, ground",
  );
});
