import { expect, test } from "vitest";
import { meanInterval } from "../../src/estimate/meanInterval.js";

// R 4.2.2: t.test(sleep$extra[1:10]) on datasets::sleep (Student 1908, first drug): 0.75, limits -0.5297804 and 2.0297804.
test("Student's sleep data, first drug", () => {
  const mean = meanInterval([0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0]);
  expect(mean.estimate).toBeCloseTo(0.75, 12);
  expect(mean.lower).toBeCloseTo(-0.5297804, 7);
  expect(mean.upper).toBeCloseTo(2.0297804, 7);
  expect(mean).toMatchObject({ n: 10, missing: 0 });
});

test("nulls are counted, a single value has no limits, NaN is refused", () => {
  expect(meanInterval([1, null, 3])).toMatchObject({ n: 2, missing: 1, estimate: 2 });
  expect(meanInterval([4])).toMatchObject({ lower: null, upper: null, note: "One value has no limits." });
  expect(meanInterval([4, 4])).toMatchObject({ lower: null, upper: null });
  expect(() => meanInterval([Number.NaN])).toThrow();
  expect(() => meanInterval([null])).toThrow("No value");
});
