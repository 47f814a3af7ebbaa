import { expect, test } from "vitest";
import { listed } from "../../../src/answer/words/listed.js";

test("a list reads as a phrase", () => {
  expect(listed([])).toBe("none");
  expect(listed(["Bramble"])).toBe("Bramble");
  expect(listed(["Bramble", "Kestrel"])).toBe("Bramble and Kestrel");
  expect(listed(["A", "B", "C"])).toBe("A, B and C");
});

test("a long list is cut with a count that is right", () => {
  expect(listed(["A", "B", "C", "D", "E"], 3)).toBe("A, B and 3 more");
  expect(listed(["A", "B", "C"], 3)).toBe("A, B and C");
});
