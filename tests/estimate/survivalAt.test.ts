import { expect, test } from "vitest";
import { kaplanMeier } from "../../src/estimate/kaplanMeier.js";
import { survivalAt } from "../../src/estimate/survivalAt.js";
import { faultCode } from "./faultCode.js";
import { leukaemia } from "./leukaemia.js";
import { expectNear } from "./reference.js";

const rows = leukaemia.maintained;
const curve = kaplanMeier(rows);

test("between two events the curve keeps the height of the earlier one", () => {
  // R 4.2.2, survival 3.5-3: summary(survfit(Surv(time, status) ~ x, aml, conf.type = "log-log"), times = 20): 7 at risk, 0.7159.
  const at20 = survivalAt(curve, rows, 20)!;
  expect(at20.atRisk).toBe(7);
  expectNear([at20.estimate, at20.lower, at20.upper], [0.7159091, 0.35019039, 0.899024], 1e-6);
});

test("before the first event nothing has happened; after the last watch nothing is known", () => {
  expect(survivalAt(curve, rows, 8)).toEqual({ time: 8, atRisk: 11, estimate: 1, lower: null, upper: null });
  expect(survivalAt(curve, rows, 162)).toBeNull();
  expect(survivalAt(curve, [...rows, { time: null, event: true }], 8)!.atRisk).toBe(11);
  expect(faultCode(() => survivalAt(curve, rows, -1))).toBe("out_of_range");
});
