import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { EstimateError } from "../../src/estimate/EstimateError.js";
import { fitCox, type CoxFit } from "../../src/estimate/fitCox.js";
import { logRank } from "../../src/estimate/logRank.js";
import { faultCode } from "./faultCode.js";
import { leukaemia } from "./leukaemia.js";
import { expectNear, referenceRows } from "./reference.js";

const estimates = (fit: CoxFit) => fit.coefficients.map(({ estimate }) => estimate);
const errors = (fit: CoxFit) => fit.coefficients.map(({ se }) => se);

describe("weeks of remission without against with maintenance (survival 3.5-3, aml) by R coxph", () => {
  const rows = [
    ...leukaemia.maintained.map((row) => ({ ...row, kept: false })),
    ...leukaemia.not.map((row) => ({ ...row, kept: true })),
  ];
  const options = { rows, outcome: { time: "time", event: "event" }, terms: ["kept"] } as const;

  test.each([
    ["efron", 0.915532575, 0.5119342752],
    ["breslow", 0.9042197237, 0.5122479073],
  ] as const)("%s", (ties, estimate, se) => {
    const fit = fitCox({ ...options, ties });
    // coxph stops at changes of 1e-9 of the likelihood.
    expectNear([...estimates(fit), ...errors(fit)], [estimate, se], 1e-7);
    expect([fit.n, fit.events, fit.clusters]).toEqual([23, 18, null]);
  });

  test("hazard ratio and limits are those of the logarithm", () => {
    const { hazardRatio } = fitCox(options).coefficients[0]!;
    const reach = 1.959963984540054 * 0.5119342752;
    expectNear(
      [hazardRatio.estimate, hazardRatio.lower, hazardRatio.upper],
      [0.915532575, 0.915532575 - reach, 0.915532575 + reach].map(Math.exp),
      1e-6,
    );
  });
});

describe("shoes lost (invented; tests/reference/survival) by R coxph run to 1e-13", () => {
  const rows = referenceRows("survival/shoes.csv");
  const values = referenceRows("survival/references.csv");
  const wanted = (fit: string, quantity: string) =>
    values.filter((row) => row["case"] === fit && row["quantity"] === quantity).map((row) => Number(row["value"]));
  const terms = ["wet", { column: "ground", reference: "clay" }, "hind"] as const;
  const options = { rows, outcome: { time: "days", event: "lost" }, terms } as const;

  test.each(["efron", "breslow"] as const)("%s ties", (ties) => {
    const fit = fitCox({ ...options, ties });
    expectNear(estimates(fit), wanted(ties, "estimate"), 1e-8);
    expectNear(errors(fit), wanted(ties, "se"), 1e-8);
    expectNear([fit.nullLogLik, fit.logLik], wanted(ties, "loglik"), 1e-11);
    expectNear([fit.scoreTest.statistic], wanted(ties, "score test"), 1e-9);
    const [none, full] = wanted(ties, "loglik") as [number, number];
    expectNear([fit.likelihoodRatio.statistic, fit.aic], [2 * (full - none), -2 * full + 8], 1e-9);
    expect(fit.likelihoodRatio.df).toBe(4);
  });

  test.each(["efron", "breslow"] as const)("%s ties, errors by yard times the root of 12/11", (ties) => {
    const fit = fitCox({ ...options, ties, cluster: "yard" });
    expectNear(estimates(fit), wanted(`${ties} by yard`, "estimate"), 1e-8);
    expectNear(
      errors(fit).map((se) => se / Math.sqrt(12 / 11)),
      wanted(`${ties} by yard`, "robust se"),
      1e-8,
    );
    expect([fit.clusters, fit.coefficients[0]!.df, fit.notes.length]).toEqual([12, 11, 1]);
  });

  test("order of rows, unit of a term and the clock's stretch do not matter", () => {
    const plain = fitCox({ ...options, cluster: "yard" });
    fc.assert(
      fc.property(
        fc.shuffledSubarray(rows, { minLength: rows.length }),
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        (mixed, unit) => {
          const fit = fitCox({
            ...options,
            cluster: "yard",
            rows: mixed.map((row) => ({ ...row, days: Number(row["days"]) ** 2, wet: Number(row["wet"]) * unit + 3 })),
          });
          expectNear(
            [fit.logLik, estimates(fit)[0]! * unit, errors(fit)[0]! * unit],
            [plain.logLik, estimates(plain)[0]!, errors(plain)[0]!],
            1e-7,
          );
          expectNear(estimates(fit).slice(1), estimates(plain).slice(1), 1e-6);
        },
      ),
      { numRuns: 20 },
    );
  });

  test("rows with something missing are left out and counted", () => {
    const more = [...rows, { ...rows[0], days: null }, { ...rows[0], lost: null }, { ...rows[0], ground: null }];
    const fit = fitCox({ ...options, rows: more });
    expect(fit.n).toBe(rows.length);
    expect(fit.dropped.map(({ column, count }) => [column, count])).toEqual([
      ["lost", 1],
      ["ground", 1],
      ["days", 1],
    ]);
    expect(fit.coefficients.map(({ name }) => name)).toEqual(["wet", "ground: sand", "ground: stone", "hind"]);
  });
});

test("without ties the score test of two groups is the log-rank test", () => {
  const group = fc.array(fc.record({ event: fc.boolean(), group: fc.boolean() }), { minLength: 8, maxLength: 40 });
  fc.assert(
    fc.property(group, (people) => {
      const rows = people.map((row, i) => ({ ...row, time: i + 1 }));
      const [one, other] = [rows.filter((row) => row.group), rows.filter((row) => !row.group)];
      fc.pre(one.length > 0 && other.length > 0);
      const { chiSquare } = logRank([one, other]);
      let fit: CoxFit;
      try {
        fit = fitCox({ rows, outcome: { time: "time", event: "event" }, terms: ["group"] });
      } catch (fault) {
        // No event, or all of them on one side; see below.
        expect(fault).toBeInstanceOf(EstimateError);
        return;
      }
      expectNear([fit.scoreTest.statistic], [chiSquare!], 1e-8);
    }),
  );
});

describe("what cannot be fitted", () => {
  const rows = [3, 5, 5, 8, 9, 12].map((time, i) => ({ time, event: i % 2 === 0, x: [2, 1, 4, 3, 9, 5][i]!, yard: i % 2 }));
  const options = { rows, outcome: { time: "time", event: "event" }, terms: ["x"] } as const;
  const changed = (change: object) => ({ ...options, rows: rows.map((row, i) => (i === 1 ? { ...row, ...change } : row)) });

  test.each([
    ["no event", { ...options, rows: rows.map((row) => ({ ...row, event: false })) }, "no_variation"],
    ["the one with the event always highest", { ...options, rows: rows.map((row) => ({ ...row, x: -row.time })) }, "separation"],
    ["a group without events", { ...options, rows: rows.map((row) => ({ ...row, x: row.event })) }, "separation"],
    [
      "a term that varies before the first event only",
      { ...options, rows: [...rows.map((row) => ({ ...row, x: 1 })), { time: 1, event: false, x: 2, yard: 1 }] },
      "collinear",
    ],
    ["a constant term", { ...options, rows: rows.map((row) => ({ ...row, x: 1 })) }, "collinear"],
    ["no term", { ...options, terms: [] }, "empty"],
    ["no rows", { ...options, rows: [] }, "empty"],
    ["one yard", { ...options, rows: rows.map((row) => ({ ...row, yard: 1 })), cluster: "yard" }, "too_few"],
    ["a time below 0", changed({ time: -1 }), "out_of_range"],
    ["an event that is 2", changed({ event: 2 }), "out_of_range"],
    ["NaN in a term", changed({ x: NaN }), "not_a_number"],
    ["infinite time", changed({ time: Infinity }), "not_a_number"],
    ["a column there is not", { ...options, terms: ["y"] }, "unknown_column"],
    ["a level of 95", { ...options, level: 95 }, "out_of_range"],
    ["ties there are not", { ...options, ties: "exact" as "efron" }, "out_of_range"],
  ])("%s", (_, asked, code) => {
    expect(faultCode(() => fitCox(asked))).toBe(code);
  });
});
