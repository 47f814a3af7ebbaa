import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import * as estimate from "../../src/index.js";

/** A sound call of every estimator that takes numbers as they are, not rows and columns: arguments that fit it. */
export interface SoundCall {
  readonly name: string;
  readonly run: (...given: never[]) => unknown;
  readonly given: readonly unknown[];
}

const clusters = [
  { cases: 1, n: 4 },
  { cases: 3, n: 4 },
  { cases: 0, n: 3 },
  { cases: 2, n: 6 },
];
const strata = [
  { a: 9, b: 21, c: 4, d: 26 },
  { a: 5, b: 7, c: 3, d: 15 },
];
const times = [
  { time: 4, event: true },
  { time: 6, event: false },
  { time: 6, event: true },
  { time: 9, event: true },
  { time: 11, event: false },
];
const ratings = [
  [9, 5, 6, 8],
  [6, 1, 3, 2],
  [8, 4, 6, 8],
  [7, 1, 2, 6],
];
const values = [3.1, 4.7, 2.2, 5.9, 4.1, 3.3, 6.2, 5];
const pairs = values.map((first, i) => ({ first, second: first + [0.3, -0.2, 0.1, 0, 0.4, -0.5, 0.2, 0.1][i]! }));
const exposed = Array.from({ length: 40 }, (_, i) => ({
  case: i % 3 === 0 || i % 7 === 0,
  exposed: i % 2 === 0,
  cluster: `yard ${i % 8}`,
  stratum: i < 20 ? "wet" : "dry",
}));
const random = () => seededRandom("faults");

/** Every estimator of numbers with a call that works; each number in it is a place for a fault. */
export const soundCalls: readonly SoundCall[] = [
  { name: "wilsonInterval", run: estimate.wilsonInterval, given: [3, 20, { level: 0.9 }] },
  { name: "waldInterval", run: estimate.waldInterval, given: [3, 20, { level: 0.9 }] },
  { name: "clopperPearsonInterval", run: estimate.clopperPearsonInterval, given: [3, 20, { level: 0.9 }] },
  { name: "midPInterval", run: estimate.midPInterval, given: [3, 20, { level: 0.9 }] },
  { name: "agrestiCoullInterval", run: estimate.agrestiCoullInterval, given: [3, 20, { level: 0.9 }] },
  { name: "newcombeDifference", run: estimate.newcombeDifference, given: [3, 20, 5, 17, { level: 0.9 }] },
  { name: "newcombePairedDifference", run: estimate.newcombePairedDifference, given: [9, 4, 2, 12, { level: 0.9 }] },
  { name: "clusteredProportion", run: estimate.clusteredProportion, given: [clusters, { level: 0.9 }] },
  { name: "clusterCorrelation", run: estimate.clusterCorrelation, given: [clusters] },
  { name: "raoScott", run: estimate.raoScott, given: [[clusters, clusters.slice(1)]] },
  { name: "donnerTest", run: estimate.donnerTest, given: [[clusters, clusters.slice(1)]] },
  { name: "tableOf", run: estimate.tableOf, given: [9, 21, 4, 26, { level: 0.9 }] },
  { name: "fisherExact", run: estimate.fisherExact, given: [9, 21, 4, 26, { level: 0.9 }] },
  { name: "fisherExactTable", run: estimate.fisherExactTable, given: [[[3, 4, 1], [2, 6, 5]]] }, // prettier-ignore
  { name: "mantelHaenszel", run: estimate.mantelHaenszel, given: [strata, { level: 0.9 }] },
  { name: "breslowDay", run: estimate.breslowDay, given: [strata, { oddsRatio: 2.1 }] },
  { name: "woolfTest", run: estimate.woolfTest, given: [strata, { about: 2.1 }] },
  { name: "conditionalOddsRatio", run: estimate.conditionalOddsRatio, given: [strata, { level: 0.9 }] },
  { name: "mcnemar", run: estimate.mcnemar, given: [12, 3, { level: 0.9 }] },
  { name: "trendTest", run: estimate.trendTest, given: [[2, 5, 9], [30, 32, 28], [1, 2, 4]] }, // prettier-ignore
  { name: "incidenceRate", run: estimate.incidenceRate, given: [12, 34.5, { level: 0.9 }] },
  { name: "rateRatio", run: estimate.rateRatio, given: [12, 34.5, 7, 41, { level: 0.9 }] },
  { name: "kaplanMeier", run: estimate.kaplanMeier, given: [times, { level: 0.9, horizon: 8 }] },
  { name: "logRank", run: estimate.logRank, given: [[times, times.slice(0, 3)], { rho: 1 }] },
  { name: "cohenKappa", run: estimate.cohenKappa, given: [[[10, 4, 1], [5, 10, 2], [2, 4, 12]], { level: 0.9 }] }, // prettier-ignore
  { name: "intraclassCorrelation", run: estimate.intraclassCorrelation, given: [ratings, { level: 0.9 }] },
  { name: "standardErrorOfMeasurement", run: estimate.standardErrorOfMeasurement, given: [ratings, { level: 0.9 }] },
  { name: "minimumDetectableChange", run: estimate.minimumDetectableChange, given: [1.3, { level: 0.9 }] },
  { name: "blandAltman", run: estimate.blandAltman, given: [pairs, { level: 0.9, multiplier: 2 }] },
  { name: "trueFromApparent", run: estimate.trueFromApparent, given: [0.3, 0.8, 0.9, { n: 100, level: 0.9 }] },
  { name: "benjaminiHochberg", run: estimate.benjaminiHochberg, given: [[0.01, 0.2, 0.04]] },
  { name: "holm", run: estimate.holm, given: [[0.01, 0.2, 0.04]] },
  {
    name: "attributableFraction",
    run: (rows, options) => estimate.attributableFraction(rows, { ...(options as object), random: random() }),
    given: [exposed, { level: 0.9, replicates: 200 }],
  },
  {
    name: "clusterBootstrap",
    run: (groups: readonly (readonly number[])[], options: object) =>
      estimate.clusterBootstrap(groups, (rows) => rows.reduce((sum, value) => sum + value, 0) / rows.length, {
        ...options,
        random: random(),
      }),
    given: [[[1, 2], [4], [3, 5], [2]], { level: 0.9, replicates: 200 }],
  },
  { name: "describe", run: estimate.describe, given: [values] },
  { name: "autocorrelation", run: estimate.autocorrelation, given: [values, 1] },
  { name: "meanInterval", run: estimate.meanInterval, given: [values, { level: 0.9 }] },
  {
    name: "referenceBand",
    run: estimate.referenceBand,
    given: [Array.from({ length: 150 }, (_, i) => 40 + ((i * 37) % 100) / 7), { level: 0.9, percentiles: [5, 50, 95] }],
  },
];
