import { expect, test } from "vitest";
import { hintsOf } from "../../src/show/hintsOf.js";

const hinted = (...hints: string[]) => hintsOf(hints.map((hint) => ({ hint })));

test("two ways to mend are both said, once each; of more the first", () => {
  expect(hinted("Add it.", "Quote it.", "Add it.")).toBe("Add it. Quote it.");
  expect(hinted("A?", "B?", "C?")).toBe("A?");
  expect(hinted()).toBe("");
});
