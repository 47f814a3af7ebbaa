import { describe, expect, test } from "vitest";
import { fitMixedLogistic } from "../../src/estimate/fitMixedLogistic.js";
import { marginalPrevalence } from "../../src/estimate/marginalPrevalence.js";
import { faultCode } from "./faultCode.js";
import { mixedReference } from "./mixedReference.js";
import { referenceRows } from "./reference.js";

const rows = referenceRows("sim-nested-feet.csv");
const fit = fitMixedLogistic({ rows, outcome: "y", terms: ["wet", "hind"], groups: ["yard", "horse"] });

describe("against R: integrate() of the logistic curve, delta method by numDeriv (reference/mixed/references.R)", () => {
  const cattle = { rows: referenceRows("cbpp.csv"), outcome: { cases: "incidence", n: "size" } } as const;
  test.each([
    ["feet exact", fit, { wet: 1.2, hind: 1 }],
    ["horse exact", fitMixedLogistic({ rows, outcome: "y", terms: ["wet", "hind"], groups: ["horse"] }), { wet: 1, hind: 0 }],
    [
      "cbpp exact",
      fitMixedLogistic({ ...cattle, terms: [{ column: "period", reference: 1 }], groups: ["herd"] }),
      { "period: 2": 0, "period: 3": 1, "period: 4": 0 },
    ],
  ] as const)("%s", (reference, model, at) => {
    const wanted = mixedReference(reference);
    const { estimate, seLogOdds, lower, upper } = marginalPrevalence(model, at);
    expect(estimate).toBeCloseTo(wanted("marginal").get(0)!, 7);
    // The error leans on numDeriv's Hessian and gradient.
    expect(seLogOdds).toBeCloseTo(wanted("marginal se").get(0)!, 6);
    expect(lower).toBeLessThan(estimate);
    expect(upper).toBeGreaterThan(estimate);
  });
});

test("limits are those of t on the log odds", () => {
  const { estimate, seLogOdds, upper } = marginalPrevalence(fit, { wet: 1, hind: 0 }, { level: 0.9 });
  const logOdds = (p: number) => Math.log(p / (1 - p));
  // qt(.95, 22) = 1.7171443744
  expect((logOdds(upper) - logOdds(estimate)) / seLogOdds).toBeCloseTo(1.7171443744, 8);
});

test("averaging over groups draws the prevalence towards a half", () => {
  const typical = 1 / (1 + Math.exp(-fit.coefficients[0]!.estimate));
  expect(marginalPrevalence(fit, { wet: 0, hind: 0 }).estimate).toBeGreaterThan(typical);
});

test("with SDs of 0 it is the logistic curve itself", () => {
  const flat = { ...fit, groups: fit.groups.map((group) => ({ ...group, sd: 0 })) };
  const eta = fit.coefficients[0]!.estimate + 2 * fit.coefficients[1]!.estimate;
  const { estimate, seLogOdds } = marginalPrevalence(flat, { wet: 2, hind: 0 });
  expect(estimate).toBeCloseTo(1 / (1 + Math.exp(-eta)), 13);
  const [a, b] = [fit.covariance[0]!, fit.covariance[1]!];
  expect(seLogOdds).toBeCloseTo(Math.sqrt(a[0]! + 4 * a[1]! + 4 * b[1]!), 12);
});

test("faults", () => {
  expect(faultCode(() => marginalPrevalence(fit, { wet: 1 }))).toBe("length_mismatch");
  expect(faultCode(() => marginalPrevalence(fit, { wet: 1, hind: 0, front: 1 }))).toBe("unknown_column");
  expect(faultCode(() => marginalPrevalence(fit, { wet: NaN, hind: 0 }))).toBe("not_a_number");
  expect(faultCode(() => marginalPrevalence(fit, { wet: 1, hind: 0 }, { level: 2 }))).toBe("out_of_range");
});
