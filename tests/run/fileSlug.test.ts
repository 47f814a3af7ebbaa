import { expect, test } from "vitest";
import { fileSlug } from "../../src/run/fileSlug.js";

test.each([
  ["Bess", "Bess"],
  ["Mr. O'Neill's grey", "Mr-O-Neill-s-grey"],
  ["../../etc/passwd", "etc-passwd"],
  ["Gráinne 2", "Gráinne-2"],
  ["C:\\con", "C-con"],
  ["…", "unnamed"],
])("%s becomes %s", (name, slug) => {
  expect(fileSlug(name)).toBe(slug);
});

test("a very long name is cut", () => {
  expect(fileSlug("x".repeat(500))).toHaveLength(80);
});
