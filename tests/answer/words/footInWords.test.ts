import { expect, test } from "vitest";
import { footInWords } from "../../../src/answer/words/footInWords.js";

// Common practice, no source: near is the horse's left, off its right.
test("feet are named near and off", () => {
  expect(footInWords("LF")).toBe("near fore");
  expect(footInWords("RH")).toBe("off hind");
});
