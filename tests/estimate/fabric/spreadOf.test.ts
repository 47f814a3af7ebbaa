import { expect, test } from "vitest";
import { spreadOf } from "../../../src/estimate/fabric/spreadOf.js";
import { seededRandom } from "../../../src/estimate/numeric/seededRandom.js";

const random = seededRandom("spread");
const subjects = 3000;
const values = Array.from({ length: subjects }, () => {
  const truth = random.normal(50, 3);
  return Array.from({ length: 4 }, () => random.normal(truth, 1.5));
}).flat();
const readings = {
  columns: 1,
  values,
  starts: Array.from({ length: subjects + 1 }, (_, at) => 4 * at),
  days: values.map((_, at) => at % 4),
};

test("variances between and within that were put in are found", () => {
  const spread = spreadOf(readings, 0, { least: 0.1 });
  // 3000 subjects: a standard error of 2.6 % between and 1.5 % within; what lies beyond three deviations takes 3 % from the latter.
  expect(spread?.mean).toBeCloseTo(50, 0);
  expect((spread?.between ?? NaN) / 9).toBeCloseTo(1, 0);
  expect(Math.abs((spread?.between ?? NaN) / 9 - 1)).toBeLessThan(0.1);
  expect(Math.abs((spread?.within ?? NaN) / 2.25 - 1)).toBeLessThan(0.08);
});

test("one faulty reading in fifty hardly moves the variance within", () => {
  const faulty = values.map((value, at) => (at % 50 === 0 ? value + 40 : value));
  const spread = spreadOf({ ...readings, values: faulty }, 0, { least: 0.1 });
  // A fault also moves its subject's mean, and so the three readings beside it, by 10; all four lie far out.
  expect(Math.abs((spread?.within ?? NaN) / 2.25 - 1)).toBeLessThan(0.15);
});

test("nine degrees of freedom are too few, and no reading is believed to repeat better than its step", () => {
  const few = (count: number) => ({
    columns: 1,
    values: Array<number>(count).fill(5),
    starts: [0, count],
    days: Array.from({ length: count }, (_, at) => at),
  });
  expect(spreadOf(few(10), 0, { least: 0.25 })).toBeNull();
  expect(spreadOf(few(11), 0, { least: 0.25 })).toEqual({ mean: 5, between: 0, within: 0.25 });
});
