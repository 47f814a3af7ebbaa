import { describe, expect, test } from "vitest";
import { rainSensitivity } from "../../src/answer/rainSensitivity.js";
import { footVisit } from "../footVisit.js";
import { answered } from "./climateAnswer.js";
import { poorStudies, seasonHerd, steadyRain } from "./seasonHerd.js";

test("other choices, yards left out, bounds and the control outcome", { timeout: 120_000 }, () => {
  const study = seasonHerd({ unseenShare: 0.1 });
  const { tables, cautions } = answered(rainSensitivity(study));
  const [other, without, bounds] = tables;
  const control = other!.rows.at(-1)!;
  // Horn colour was drawn without regard to rain.
  expect(control["name"]).toMatch(/^Control outcome/);
  expect(Number(control["lower"]) < 1 && 1 < Number(control["upper"])).toBe(true);
  // Nobody was graded 2 or more.
  expect(other!.rows.find((row) => row["name"] === "Case at grade 2 or more")!["estimate"]).toBeNull();
  expect(without!.rows).toHaveLength(12);
  const [prevalence] = bounds!.rows;
  const unseen = study.visits.filter(({ thrushGrade }) => thrushGrade === null).length;
  expect([prevalence!["n"], prevalence!["missing"]]).toEqual([study.visits.length - unseen, unseen]);
  expect(Number(prevalence!["highest"]) - Number(prevalence!["lowest"])).toBeCloseTo(unseen / study.visits.length, 10);
  expect(cautions.some((caution) => caution.includes("two observers"))).toBe(true);
});

test("feet scored twice give agreement by quarter", { timeout: 120_000 }, () => {
  const study = seasonHerd();
  const twice = study.visits.slice(0, 200).map((row) => footVisit({ ...row, observerId: "L" }));
  const { tables, charts } = answered(rainSensitivity({ ...study, visits: [...study.visits, ...twice] }));
  const drift = tables.find(({ caption }) => caption.startsWith("Agreement of observers K and L"))!;
  // The second observer copied the first.
  expect(drift.rows.at(-1)).toMatchObject({ quarter: "all", n: 200, kappa: 1, difference: 0 });
  expect(charts).toHaveLength(3);
});

describe.each([...poorStudies(), steadyRain()])("%s", (_, study, reason) => {
  test("says why there is no estimate", () => {
    const reply = rainSensitivity(study);
    expect(reply.kind === "not_enough_data" && reason.test(reply.reason)).toBe(true);
  });
});
