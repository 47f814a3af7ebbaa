import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitMixedLogistic, type MixedLogisticFit, type MixedLogisticOptions } from "../../src/estimate/fitMixedLogistic.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";

interface FootRow {
  readonly yard: string;
  readonly horse: string;
  readonly wet: number;
  readonly hind: boolean;
  readonly thrush: boolean;
}

/** Feet of 8 yards with 4 to 7 horses, two visits each. */
function study(seed: number): FootRow[] {
  const random = seededRandom(seed);
  return Array.from({ length: 8 }, (_, y) => {
    const yardEffect = random.normal(0, 0.8);
    const wets = [random.normal(), random.normal()];
    return Array.from({ length: random.integer(4, 7) }, (_, h) => {
      const effect = yardEffect + random.normal();
      return wets.flatMap((wet) =>
        [false, false, true, true].map((hind) => {
          const risk = 1 / (1 + Math.exp(1 - 0.5 * wet - (hind ? 0.6 : 0) - effect));
          return { yard: `y${y}`, horse: `h${h}`, wet, hind, thrush: random.bernoulli(risk) };
        }),
      );
    });
  }).flat(2);
}

const asAsked = { outcome: "thrush", terms: ["wet", "hind"], groups: ["yard", "horse"] } as const;
const fitOf = (rows: readonly object[], options: Partial<MixedLogisticOptions> = {}) =>
  fitMixedLogistic({ rows, ...asAsked, ...options });

/** The same numbers to what the stopping rule leaves, a hundred-thousandth of a standard error; the log-likelihood to what the points leave. */
function expectSame(a: MixedLogisticFit, b: MixedLogisticFit): void {
  a.coefficients.forEach(({ estimate, se }, j) => {
    const other = b.coefficients[j]!;
    expect(Math.abs(estimate - other.estimate)).toBeLessThan(1e-5 * se);
    expect(Math.abs(se - other.se)).toBeLessThan(1e-5 * se);
  });
  a.groups.forEach(({ sd }, g) => {
    expect(Math.abs(sd - b.groups[g]!.sd)).toBeLessThan(1e-5);
  });
  expect(Math.abs(a.logLik - b.logLik)).toBeLessThan(1e-8 * Math.abs(a.logLik));
}

const seeds = fc.integer({ min: 0, max: 1e6 });
const runs = { numRuns: 5, seed: 20261125 };

describe.each(["quadrature", "laplace"] as const)("%s", { timeout: 120_000 }, (method) => {
  test("the order of rows does not matter", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const rows = study(seed);
        const random = seededRandom(`${seed} order`);
        const shuffled = rows.map((row) => ({ row, key: random.uniform() })).sort((a, b) => a.key - b.key);
        expectSame(
          fitOf(rows, { method }),
          fitOf(
            shuffled.map(({ row }) => row),
            { method },
          ),
        );
      }),
      runs,
    );
  });

  test("names of yards and horses do not matter, nor whether horses share names across yards", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const rows = study(seed);
        const renamed = rows.map((row) => ({
          ...row,
          yard: 100 - Number(row.yard.slice(1)),
          horse: `${row.horse} of ${row.yard}`,
        }));
        expectSame(fitOf(rows, { method }), fitOf(renamed, { method }));
      }),
      runs,
    );
  });

  test("a term in other units has its coefficient in other units", () => {
    fc.assert(
      fc.property(seeds, fc.constantFrom(1e-6, 0.1, 25.4, 1e7), fc.integer({ min: -50, max: 50 }), (seed, unit, middle) => {
        const rows = study(seed);
        const fit = fitOf(rows, { method });
        const other = fitOf(rows, { method, terms: [{ column: "wet", per: unit, centre: middle }, "hind"] });
        const [intercept, wet, hind] = other.coefficients;
        expect(Math.abs(wet!.estimate / unit - fit.coefficients[1]!.estimate)).toBeLessThan(1e-5 * fit.coefficients[1]!.se);
        expect(Math.abs(wet!.se / unit / fit.coefficients[1]!.se - 1)).toBeLessThan(1e-5);
        expect(Math.abs(hind!.estimate - fit.coefficients[2]!.estimate)).toBeLessThan(1e-5 * hind!.se);
        const moved = fit.coefficients[0]!.estimate + middle * fit.coefficients[1]!.estimate;
        expect(Math.abs(intercept!.estimate - moved)).toBeLessThan(1e-4 * intercept!.se);
        expect(Math.abs(other.logLik - fit.logLik)).toBeLessThan(1e-8);
      }),
      runs,
    );
  });

  test("rows of counts and their single feet give one fit, binomial coefficients apart", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const rows = study(seed);
        const counts = new Map<string, { yard: string; horse: string; wet: number; hind: boolean; cases: number; n: number }>();
        for (const { yard, horse, wet, hind, thrush } of rows) {
          const key = [yard, horse, wet, hind].join();
          const before = counts.get(key) ?? { yard, horse, wet, hind, cases: 0, n: 0 };
          counts.set(key, { ...before, cases: before.cases + (thrush ? 1 : 0), n: before.n + 1 });
        }
        const single = fitOf(rows, { method });
        const pooled = fitOf([...counts.values()], { method, outcome: { cases: "cases", n: "n" } });
        // Two feet of which one is a case come in two orders.
        const orders = [...counts.values()].filter(({ cases }) => cases === 1).length * Math.log(2);
        expect(pooled.n).toBe(single.n);
        expectSame(single, { ...pooled, logLik: pooled.logLik - orders });
      }),
      runs,
    );
  });

  test("calling cases clear turns every sign", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const rows = study(seed);
        const turned = fitOf(
          rows.map((row) => ({ ...row, thrush: !row.thrush })),
          { method },
        );
        const coefficients = turned.coefficients.map((row) => ({ ...row, estimate: -row.estimate }));
        expectSame(fitOf(rows, { method }), { ...turned, coefficients });
      }),
      runs,
    );
  });
});

test("the rows are left as they were", () => {
  const rows = study(5).map((row) => Object.freeze(row));
  expect(fitOf(Object.freeze(rows)).n).toBe(rows.length);
});
