import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Term } from "../../src/estimate/Term.js";
import * as estimate from "../../src/index.js";
import { composedCalls } from "./composedCalls.js";
import { faultCode } from "./faultCode.js";
import { feet, fits } from "./faultRows.js";
import { soundCalls } from "./faultTable.js";
import { outcomeOf } from "./outcomeOf.js";
import { numbersIn, replaced } from "./valuesIn.js";

const rows = feet();
/** The rows with some columns of the fourth changed; or of all of them. */
const one = (change: object) => rows.map((row, i) => (i === 3 ? { ...row, ...change } : row));
const all = (change: (row: (typeof rows)[number], i: number) => object) => rows.map((row, i) => ({ ...row, ...change(row, i) }));

test("every estimator in the index is put to these tests, or takes outlines, periods, fits or records as they were read", () => {
  const elsewhere =
    /[Oo]utline|[Pp]rocrustes|shape|toeTaper|Asymmetry|frogTo|Fourier|mirrored|linearDiscriminant|crossValidated|daysCovered|designMatrix|pairedRatings|marginalPrevalence|waldTest|prevalence|minimumDetectableOf|footEndChances|randomFrom/;
  const tested = [...fits, ...soundCalls, ...composedCalls].map(({ name }) => name.split(" ")[0]);
  const missing = estimators().filter((name) => !tested.includes(name) && !elsewhere.test(name));
  expect(missing).toEqual([]);
});

function estimators(): readonly string[] {
  const files = readdirSync(`${import.meta.dirname}/../../src/estimate`).filter((file) => file.endsWith(".ts"));
  return files
    .map((path) => path.replace(/\.ts$/, ""))
    .filter((name) => typeof (estimate as Readonly<Record<string, unknown>>)[name] === "function" && /^[a-z]/.test(name));
}

describe.each(fits)("$name", ({ outcome, weights, grouped, run }) => {
  const fails = (code: string, faulty: readonly object[], options?: { level?: number; terms?: readonly Term[] }) => {
    expect(outcomeOf(() => run(faulty, options))).toBe(code);
  };

  test("gives numbers for sound rows", () => {
    expect(outcomeOf(() => run(rows))).toBeNull();
  });

  test("terms", () => {
    fails("not_a_number", one({ wet: NaN }));
    fails("not_a_number", one({ wet: Infinity }));
    fails("not_a_number", one({ wet: "a lot" }));
    fails(
      "out_of_range",
      all(({ wet }) => ({ wet: wet * 1e200 })),
    );
    fails(
      "out_of_range",
      all(({ wet }) => ({ wet: wet * 1e-200 })),
    );
    fails(
      "collinear",
      all(() => ({ hind: true })),
    );
    fails(
      "collinear",
      all(({ wet }) => ({ hind: 2 * wet + 1 })),
    );
    fails("unknown_column", rows, { terms: ["wett"] });
    fails("empty", rows, { terms: undefined as unknown as Term[] });
    fails("out_of_range", rows, { terms: [3 as unknown as Term] });
  });

  test("outcome", () => {
    fails("not_a_number", one({ [outcome]: NaN }));
    fails("not_a_number", one({ [outcome]: -Infinity }));
    fails("not_a_number", one({ [outcome]: "yes" }));
    const constant = all(() => ({ [outcome]: 0, sick: outcome !== "sick" }));
    fails("no_variation", outcome === "sick" ? all(() => ({ sick: false })) : constant);
    if (outcome === "cases") fails("out_of_range", one({ cases: 4 }));
    if (outcome === "sick") fails("out_of_range", one({ sick: 2 }));
    if (outcome === "count") fails("not_a_count", one({ count: 1.5 }));
  });

  test("null is left out, counted and never 0", () => {
    for (const column of ["wet", outcome, ...(weights === null ? [] : [weights]), ...(grouped ? ["yard"] : [])]) {
      const fit = run(one({ [column]: null })) as estimate.RegressionFit;
      expect(fit.dropped.map((drop) => [drop.column, drop.count])).toEqual([[column, 1]]);
      const without = run(rows.filter((_, i) => i !== 3)) as estimate.RegressionFit;
      expect(fit.coefficients).toEqual(without.coefficients);
    }
    fails(
      "empty",
      all(() => ({ wet: null })),
    );
  });

  test("weights, times and numbers examined", () => {
    if (weights === null) return;
    fails(
      "empty",
      all(() => ({ [weights]: 0, cases: 0 })),
    );
    fails("out_of_range", one({ [weights]: -1 }));
    fails("not_a_number", one({ [weights]: NaN }));
    const some = run(all((_, i) => (i % 3 === 0 ? { [weights]: 0, cases: 0 } : {}))) as estimate.RegressionFit;
    expect(some.dropped).toMatchObject([{ column: weights, count: 54 }]);
  });

  test("clusters and groups", () => {
    if (!grouped) return;
    fails(
      "too_few",
      all(() => ({ yard: "only", horse: "only" })),
    );
    fails("not_a_number", one({ yard: NaN }));
    fails("out_of_range", one({ yard: {} }));
  });

  test("rows and level", () => {
    fails("empty", []);
    fails("empty", null as unknown as object[]);
    fails("out_of_range", [...rows, null as unknown as object]);
    fails("too_few", rows.slice(0, 2));
    for (const level of [0, 1, 95, -0.5]) fails("out_of_range", rows, { level });
    fails("not_a_number", rows, { level: NaN });
    fails("not_a_number", rows, { level: "0.95" as unknown as number });
  });

  test("one foot a horse, one horse a yard", () => {
    const feetApart = rows.filter((_, i) => i % 4 === (i >> 2) % 4);
    expect([null, "too_few"]).toContain(outcomeOf(() => run(feetApart)));
    const horsesApart = rows.filter((row, i) => row.horse === "horse 2" && i % 4 === 0);
    expect([null, "too_few", "separation", "collinear", "no_variation"]).toContain(outcomeOf(() => run(horsesApart)));
  });
});

describe("separation is named", () => {
  test.each([
    ["fitLogistic", all(({ hind }) => ({ sick: hind }))],
    ["fitLogistic", all(({ hind, sick }) => ({ sick: hind || sick }))],
    ["fitLogistic of counts by yard", all(({ hind, cases }) => ({ cases: hind ? 3 : cases }))],
    ["fitPoisson", all(({ hind, count }) => ({ count: hind ? 0 : count }))],
    ["fitCox", all(({ hind, sick }) => ({ sick: hind && sick }))],
    ["fitGee", all(({ hind }) => ({ sick: hind }))],
    ["fitMixedLogistic by Laplace", all(({ hind }) => ({ sick: hind }))],
    ["fitMixedLogistic of counts by quadrature", all(({ hind, cases }) => ({ cases: hind ? 3 : cases }))],
  ])("%s", (name, faulty) => {
    const fit = fits.find((one) => one.name === name)!;
    expect(faultCode(() => fit.run(faulty))).toBe("separation");
    expect(() => fit.run(faulty)).toThrow(/"hind"/);
  });
});

test("groups that do not differ: a spread of 0 is said to be at its boundary", () => {
  // Every yard has the same feet.
  const alike = Array.from({ length: 8 }, (_, yard) => rows.slice(0, 20).map((row) => ({ ...row, yard: `yard ${yard}` }))).flat();
  const logistic = estimate.fitMixedLogistic({ rows: alike, outcome: "sick", terms: ["wet"], groups: ["yard"] });
  const linear = estimate.fitMixedLinear({ rows: alike, outcome: "angle", terms: ["wet"], groups: ["yard"] });
  for (const fit of [logistic, linear]) {
    expect(fit.groups).toMatchObject([{ name: "yard", sd: 0, boundary: true }]);
    expect(fit.notes.join(" ")).toMatch(/no difference|0/);
  }
});

test("a hundred thousand rows", () => {
  const many = feet(500, 50);
  expect(many).toHaveLength(100_000);
  for (const { name, run } of fits) {
    const start = performance.now();
    expect((run(many) as estimate.RegressionFit).n, name).toBeGreaterThanOrEqual(100_000);
    // Seconds on a laptop; the bound only catches work that grows with the square of the rows.
    expect(performance.now() - start, name).toBeLessThan(60_000);
  }
}, 300_000);

describe.each(soundCalls)("$name", ({ name, run, given }) => {
  const call = (changed: unknown) => run(...(changed as never[]));
  const places = numbersIn(given).map(([way]) => way);
  const some = places.filter((_, i) => i < 12 || i % 17 === 0 || i === places.length - 1);
  // Here the caller's own statistic meets the numbers of the rows.
  const own = name === "clusterBootstrap";

  test("gives numbers for a sound call", () => {
    expect(outcomeOf(() => call(given))).toBeNull();
    expect(places.length).toBeGreaterThan(0);
  });

  test.each([NaN, Infinity, -Infinity, "3"])("%s in any place is refused", (fault) => {
    for (const way of some) {
      if (own && fault === "3" && way.startsWith("0")) continue;
      const code = outcomeOf(() => call(replaced(given, way.split("."), fault)));
      expect(["not_a_number", "out_of_range", "not_a_count"], `${String(fault)} at ${way}`).toContain(code);
    }
  });

  test("null is refused or left out, not read as 0", () => {
    for (const way of some) {
      if (own && way.startsWith("0")) continue;
      if (/\.(level|rho|about|multiplier|horizon|n|replicates)$/.test(way) && way.split(".").length === 2) continue;
      const changed = (value: unknown) => () => call(replaced(given, way.split("."), value));
      if (outcomeOf(changed(null)) !== null || outcomeOf(changed(0)) !== null) continue;
      expect(changed(null)(), `null at ${way}`).not.toEqual(changed(0)());
    }
  });

  test("a level out of range is refused", () => {
    for (const way of places.filter((place) => place.endsWith("level"))) {
      for (const level of [0, 1, 95, -0.5]) {
        expect(outcomeOf(() => call(replaced(given, way.split("."), level)))).toBe("out_of_range");
      }
    }
  });
});
