import { expect, test } from "vitest";
import { outFolder } from "../../src/run/outFolder.js";

test("a folder is taken as it is typed; an empty name is refused", () => {
  expect(outFolder("a b/ü")).toBe("a b/ü");
  for (const typed of ["", "  "]) expect(() => outFolder(typed)).toThrow("--out names no folder.");
});
