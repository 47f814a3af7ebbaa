import { expect, test } from "vitest";
import { seededRandom } from "../../../src/estimate/numeric/seededRandom.js";
import { thrushLook } from "../../../src/simulate/district/thrushLook.js";

const n = 20_000;
const logistic = (logOdds: number) => 1 / (1 + Math.exp(-logOdds));

// The definition of proportional odds: P(grade >= g) is the logistic function of the log odds less the step of the grade. 4 standard errors.
test.each([-3, -1, 0.5])("log odds %d give the shares of grades they stand for", (logOdds) => {
  const random = seededRandom(`look ${logOdds}`);
  const grades = Array.from({ length: n }, () => thrushLook(logOdds, 0.3, [1.5, 3.2], random).grade);
  [0, 1.5, 3.2].forEach((step, grade) => {
    const expected = logistic(logOdds + 0.3 - step);
    const found = grades.filter((value) => value > grade).length / n;
    expect(Math.abs(found - expected)).toBeLessThan(4 * Math.sqrt((expected * (1 - expected)) / n));
  });
});

test("a cleft is named where there is thrush, and only there", () => {
  const random = seededRandom("sites");
  for (let look = 0; look < 300; look++) {
    const { grade, cells } = thrushLook(0.5, 0, [1.5, 3.2], random);
    expect(cells.thrush_grade).toBe(grade);
    expect(cells.thrush_site === undefined).toBe(grade === 0);
  }
});

test("the other observer sees the same frog, more severely if that is his way", () => {
  const random = seededRandom("two eyes");
  const looks = Array.from({ length: 2000 }, () => thrushLook(-1, 0, [1.5, 3.2], random));
  const mild = looks.map((look) => look.gradeBy(0));
  const severe = looks.map((look) => look.gradeBy(1.5));
  expect(looks.filter((look, place) => look.grade === mild[place]).length / 2000).toBeGreaterThan(0.75);
  expect(severe.every((grade, place) => grade >= mild[place]!)).toBe(true);
  expect(severe.reduce((a, b) => a + b)).toBeGreaterThan(1.5 * mild.reduce((a, b) => a + b));
});
