import { expect, test } from "vitest";
import type { RandomSource } from "../../../src/estimate/numeric/RandomSource.js";
import { requireRandom } from "../../../src/estimate/numeric/requireRandom.js";
import { seededRandom } from "../../../src/estimate/numeric/seededRandom.js";
import { faultCode } from "../faultCode.js";

test("a source goes through, anything else does not", () => {
  const random = seededRandom(1);
  expect(requireRandom(random)).toBe(random);
  for (const none of [undefined, null, 7, {}]) {
    expect(faultCode(() => requireRandom(none as RandomSource))).toBe("empty");
  }
});
