import { expect, test } from "vitest";
import { versionAtLeast } from "../../../src/run/lab/versionAtLeast.js";

test.each([
  ["20.19.0", "20.19.0", true],
  ["20.20.2", "20.19", true],
  ["20.9.0", "20.19.0", false],
  ["22", "20.19.0", true],
  ["18.20.4", "20.19.0", false],
  ["4.0.0rc1", "4.0.0", true],
  ["3.6.8", "4.0.0", false],
])("%s is at least %s: %s", (version, least, expected) => {
  expect(versionAtLeast(version, least)).toBe(expected);
});
