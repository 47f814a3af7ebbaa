import type { Term } from "../../src/estimate/Term.js";
import * as estimate from "../../src/index.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";

/** An invented foot: enough columns for every kind of fit. */
export interface FaultRow {
  readonly [column: string]: unknown;
  readonly yard: string;
  readonly horse: string;
  readonly wet: number;
  readonly hind: boolean;
  readonly sick: boolean;
  readonly cases: number;
  readonly n: number;
  readonly angle: number;
  readonly count: number;
  readonly time: number;
  readonly weight: number;
}

/** Eight yards of five horses of four feet, unless other numbers are given; yards and horses differ. */
export function feet(yards = 8, horses = 5): readonly FaultRow[] {
  const random = seededRandom("faults");
  return Array.from({ length: yards }, (_, yard) => {
    const ofYard = random.normal(0, 0.8);
    return Array.from({ length: horses }, (_, horse) => {
      const ofHorse = random.normal(0, 1);
      return Array.from({ length: 4 }, (_, foot) => {
        const [wet, hind] = [random.normal(0, 1), foot > 1];
        const chance = 1 / (1 + Math.exp(0.5 - ofYard - ofHorse - 0.5 * wet - 0.5 * Number(hind)));
        const sick = random.uniform() < chance;
        return {
          yard: `yard ${yard}`,
          horse: `horse ${horse}`,
          wet,
          hind,
          sick,
          cases: Math.floor(random.uniform() * 3),
          n: 3,
          angle: 50 + ofYard + ofHorse + wet + random.normal(0, 1),
          count: Math.floor(random.uniform() * 4),
          time: 1 + Math.floor(random.uniform() * 50),
          weight: 1 + Math.floor(random.uniform() * 3),
        };
      });
    }).flat();
  }).flat();
}

/** What a fault in the rows touches: the outcome's column, a column of weights, clusters or groups. */
export interface FaultyFit {
  readonly name: string;
  readonly outcome: string;
  readonly weights: string | null;
  readonly grouped: boolean;
  readonly run: (rows: readonly object[], options?: { level?: number; terms?: readonly Term[] }) => unknown;
}

const terms = ["wet", "hind"];

/** Every estimator that takes rows and columns, as it is commonly called. */
export const fits: readonly FaultyFit[] = [
  {
    name: "fitLinear",
    outcome: "angle",
    weights: "weight",
    grouped: false,
    run: (rows, options) => estimate.fitLinear({ rows, outcome: "angle", terms, weights: "weight", ...options }),
  },
  {
    name: "fitLinear by yard",
    outcome: "angle",
    weights: null,
    grouped: true,
    run: (rows, options) => estimate.fitLinear({ rows, outcome: "angle", terms, cluster: "yard", ...options }),
  },
  {
    name: "fitLogistic",
    outcome: "sick",
    weights: "weight",
    grouped: false,
    run: (rows, options) => estimate.fitLogistic({ rows, outcome: "sick", terms, weights: "weight", ...options }),
  },
  {
    name: "fitLogistic of counts by yard",
    outcome: "cases",
    weights: "n",
    grouped: true,
    run: (rows, options) =>
      estimate.fitLogistic({ rows, outcome: { cases: "cases", n: "n" }, terms, cluster: "yard", ...options }),
  },
  {
    name: "fitPoisson",
    outcome: "count",
    weights: "time",
    grouped: true,
    run: (rows, options) =>
      estimate.fitPoisson({ rows, outcome: "count", terms, time: "time", cluster: ["yard", "horse"], ...options }),
  },
  {
    name: "fitCox",
    outcome: "sick",
    weights: null,
    grouped: true,
    run: (rows, options) =>
      estimate.fitCox({ rows, outcome: { time: "time", event: "sick" }, terms, cluster: "yard", ...options }),
  },
  {
    name: "fitGee",
    outcome: "sick",
    weights: "weight",
    grouped: true,
    run: (rows, options) => estimate.fitGee({ rows, outcome: "sick", terms, cluster: "yard", weights: "weight", ...options }),
  },
  {
    name: "fitMixedLogistic by Laplace",
    outcome: "sick",
    weights: null,
    grouped: true,
    run: (rows, options) =>
      estimate.fitMixedLogistic({ rows, outcome: "sick", terms, groups: ["yard", "horse"], method: "laplace", ...options }),
  },
  {
    name: "fitMixedLogistic of counts by quadrature",
    outcome: "cases",
    weights: "n",
    grouped: true,
    run: (rows, options) =>
      estimate.fitMixedLogistic({ rows, outcome: { cases: "cases", n: "n" }, terms, groups: ["yard"], ...options }),
  },
  {
    name: "fitMixedLinear",
    outcome: "angle",
    weights: null,
    grouped: true,
    run: (rows, options) => estimate.fitMixedLinear({ rows, outcome: "angle", terms, groups: ["yard", "horse"], ...options }),
  },
];
