import { expect, test } from "vitest";
import { minimumDetectableOf } from "../../src/estimate/minimumDetectableOf.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";

const visits = Array.from({ length: 10 }, (_, k): FootVisit[] => [
  footVisit({ horseId: `h${k}`, stage: "before_trim", observerId: "K", toeAngleDeg: 50 + k + (k % 2 === 0 ? 1 : -1) }),
  footVisit({ horseId: `h${k}`, stage: "single", observerId: "M", toeAngleDeg: 50 + k }),
]).flat();

test("from pairs one degree apart, 1.96 degrees; null with fewer feet than asked for", () => {
  // Within-foot variance 1/2: 1.96 x sqrt 2 x sqrt(1/2).
  expect(minimumDetectableOf(visits, "toeAngleDeg")).toBeCloseTo(1.959963984540054, 10);
  expect(minimumDetectableOf(visits.slice(2), "toeAngleDeg")).toBeNull();
  expect(minimumDetectableOf(visits.slice(2), "toeAngleDeg", { leastFeet: 9 })).toBeCloseTo(1.959963984540054, 10);
  expect(minimumDetectableOf(visits, "hoofWidthMm")).toBeNull();
});
