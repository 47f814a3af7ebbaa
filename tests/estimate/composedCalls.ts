import type { MarkGrowth } from "../../src/derive/markGrowth.js";
import type { ShapeMeasureRow } from "../../src/derive/ShapeMeasureRow.js";
import type { ToeGrowth } from "../../src/derive/toeGrowth.js";
import type { ExposureRow } from "../../src/estimate/attributableFraction.js";
import type { YardLook } from "../../src/estimate/differenceInDifferences.js";
import type { ExposureModel } from "../../src/estimate/ExposureModel.js";
import type { BoundedRow } from "../../src/estimate/missingBounds.js";
import type { FootRow } from "../../src/estimate/frontOrHind.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import type { ObservedGap } from "../../src/estimate/ObservedGap.js";
import type { ScoredTwice } from "../../src/estimate/observerDrift.js";
import type { SizedValue } from "../../src/estimate/contrastAtOneSize.js";
import type { SurvivalTime } from "../../src/estimate/SurvivalTime.js";
import * as estimate from "../../src/index.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { feet } from "./faultRows.js";

/** A sound call of an estimator that is composed of others or that takes rows of a kind of its own, and where its faults can lie. */
export interface ComposedCall {
  readonly name: string;
  readonly rows: readonly object[];
  readonly run: (rows: readonly object[], options?: { readonly level?: number }) => unknown;
  /** Columns that hold numbers. */
  readonly numbers: readonly string[];
  /** Columns that hold yes or no. */
  readonly findings: readonly string[];
  /** Columns in which null leaves the row out. */
  readonly nullable: readonly string[];
  /** Rows left out, as the result counts them. */
  readonly missing: (result: never) => number;
  /** The part of the result that uses all of those columns; the whole when left out. */
  readonly part?: (result: never) => unknown;
  /** Column whose value says what belongs together. */
  readonly group: string | null;
  /** Whether it takes a level. */
  readonly level: boolean;
}

const animals = feet(12, 3).map((row, i) => ({
  ...row,
  month: (i % 6) + 1,
  rain: [0, 1, 2, 3, 4].map((day) => ((i * 7 + day * 11) % 13) / 2),
}));
const model = { outcome: "sick", exposure: "wet", adjust: ["hind"], groups: ["yard", "horse"], method: "gee" } as const;
type Model = Omit<ExposureModel, "rows">;
const asked = (rows: readonly object[], options: object = {}, change: Partial<Model> = {}): ExposureModel => ({
  ...model,
  rows,
  ...change,
  ...options,
});
const exposed = {
  rows: animals,
  numbers: ["wet"],
  findings: ["sick"],
  nullable: ["wet", "sick", "hind", "yard"],
  group: "yard",
  level: true,
} as const;
const random = () => seededRandom("composed faults");
const dropped = (fit: { readonly dropped: readonly { readonly count: number }[] }) =>
  fit.dropped.reduce((sum, { count }) => sum + count, 0);
const missingIn = (result: { readonly missing: number }) => result.missing;
const missingInFirst = ([first]: readonly { readonly missing: number }[]) => first!.missing;

const gaps = Array.from({ length: 30 }, (_, i): ObservedGap => ({
  days: 20 + ((i * 5) % 17),
  event: i % 3 === 0,
  cluster: `yard ${i % 6}`,
}));
const times = Array.from({ length: 30 }, (_, i): SurvivalTime & { readonly horse: string } => ({
  time: 3 + ((i * 7 + 10) % 29),
  event: i % 4 !== 0,
  horse: `horse ${i % 8}`,
}));
const looks = Array.from({ length: 6 }, (_, yard) =>
  Array.from({ length: 5 }, (_none, horse) =>
    Array.from({ length: 24 }, (_nothing, month): YardLook => ({
      yardId: `yard ${yard}`,
      horseId: `horse ${yard}-${horse}`,
      visitDate: dateOfDay(19_000 + 30 * month + horse),
      case: (yard * 5 + horse * 3 + month * 7) % (yard === 0 && month > 12 ? 4 : 3) === 0,
    })),
  ),
).flat(2);
const scores = Array.from({ length: 60 }, (_, i): ScoredTwice => ({
  horseId: `horse ${i % 10}`,
  visitDate: i < 30 ? "2024-02-10" : "2024-05-03",
  firstGrade: (i * 3) % 4,
  secondGrade: i % 5 === 0 ? (i * 3 + 1) % 4 : (i * 3) % 4,
}));
const bounded = Array.from({ length: 40 }, (_, i): BoundedRow => ({
  case: i % 9 === 4 ? null : i % 3 === 0,
  exposed: i % 2 === 0,
  cluster: `yard ${i % 8}`,
}));
const shaped = Array.from({ length: 40 }, (_, i): FootRow & { readonly width: number; readonly length: number } => ({
  horseId: `horse ${i >> 2}`,
  end: i % 4 < 2 ? "fore" : "hind",
  side: i % 2 === 0 ? "left" : "right",
  width: 120 + (i % 4 < 2 ? 5 : 0) + ((i * 7) % 11),
  length: 130 + ((i * 5) % 13),
}));
const sized = shaped.map(({ horseId, end, width, length }, i) => ({
  ...{ horseId, end, size: width + length + (i % 3) },
  value: width / length,
}));
const noise = seededRandom("spans");
const grown = Array.from({ length: 8 }, (_, horse) => {
  const own = 0.2 + 0.03 * noise.normal();
  return Array.from({ length: 6 }, (_none, k): MarkGrowth => {
    const grownMmPerDay = own + (k < 3 ? 0 : 0.01 * (horse % 3)) + 0.02 * noise.normal();
    return {
      ...{ horseId: `horse ${horse}`, foot: k < 3 ? "LF" : "RF", footId: `horse ${horse} ${k < 3 ? "LF" : "RF"}` },
      ...{ markKind: "ring", yardId: "yard", end: "fore", shoeing: "bare", ageClass: k % 2 === 0 ? "adult" : "aged" },
      ...{ season: k % 3 === 0 ? "spring" : "autumn", from: "2024-03-01", to: "2024-04-10", days: 40 },
      ...{ fromMm: 10, toMm: 10 + 40 * grownMmPerDay, grownMm: 40 * grownMmPerDay, grownMmPerDay },
    };
  });
}).flat();
const gained = Array.from({ length: 24 }, (_, i): ToeGrowth => {
  const gainMmPerDay = 0.15 + 0.03 * ((i >> 2) % 3) + 0.02 * noise.normal();
  return {
    ...{
      horseId: `horse ${i >> 2}`,
      yardId: "yard",
      shod: "bare",
      shoeing: "bare",
      ageClass: "adult",
      season: "spring",
      foot: "LF",
    },
    ...{ from: "2024-03-01", to: "2024-04-10", days: 40, afterTrimMm: 80, beforeTrimMm: 80 + 40 * gainMmPerDay, gainMmPerDay },
  };
});
const measured = Array.from({ length: 12 }, (_, foot) => {
  const slope = 0.02 * noise.normal();
  return Array.from({ length: 5 }, (_none, k): ShapeMeasureRow => ({
    ...{ horseId: `horse ${foot}`, footId: `horse ${foot} LF`, yardId: "yard", species: "horse", type: null, ageClass: "adult" },
    ...{ shoeing: "bare", visitDate: dateOfDay(19_000 + 40 * k), daysSinceFirst: 40 * k, foot: "LF", end: "fore", side: "left" },
    ...{ stage: "before_trim", observerId: "A", measure: "shapeIndex" },
    value: 90 + noise.normal() + slope * 40 * k + 0.3 * noise.normal(),
  }));
}).flat();
const periods = animals.map((row, i) => ({ ...row, came: (i * 7) % 5 < 3 }));
const cells = (rows: readonly object[]) => rows[0] as { a: number; b: number; c: number; d: number };

/** Every estimator composed of others, or with rows of its own kind, as it is commonly called. */
export const composedCalls: readonly ComposedCall[] = [
  {
    name: "effectOfExposure by estimating equations",
    ...exposed,
    run: (rows, options) => estimate.effectOfExposure(asked(rows, options, { per: 2 })),
    missing: missingIn,
  },
  {
    name: "effectOfExposure by a mixed model",
    ...exposed,
    run: (rows, options) => estimate.effectOfExposure(asked(rows, options, { method: "mixed", groups: ["yard"] })),
    missing: missingIn,
  },
  {
    name: "contrastAtOneSize",
    rows: sized,
    run: (rows, options) => estimate.contrastAtOneSize(rows as readonly SizedValue[], options),
    numbers: ["size", "value"],
    findings: [],
    nullable: ["size", "value"],
    missing: missingIn,
    group: "horseId",
    level: true,
  },
  {
    name: "exposureEffects",
    ...exposed,
    run: (rows, options) => estimate.exposureEffects(asked(rows, options, { groups: ["yard"] }), { stratum: "month" }),
    missing: (lines: readonly { readonly missing: number }[]) => lines.at(-1)!.missing,
    // Every line uses the rows that have all columns of its own.
    part: (lines: readonly unknown[]) => lines.at(-1),
  },
  {
    name: "exposureShape",
    ...exposed,
    run: (rows, options) =>
      estimate.exposureShape(asked(rows, options), { at: [-1, 0, 1], reference: 0, knots: [-0.5, 0, 0.5], random: random() }),
    missing: missingIn,
  },
  {
    name: "exposureWindows",
    ...exposed,
    numbers: ["wet", "angle"],
    run: (rows, options) =>
      estimate.exposureWindows(asked(rows, options), [{ exposure: "wet" }, { exposure: "angle", per: 5 }], "wet"),
    missing: missingInFirst,
    part: ([first]: readonly unknown[]) => first,
  },
  {
    name: "leaveOneOut",
    ...exposed,
    run: (rows, options) => estimate.leaveOneOut(asked(rows, options)),
    missing: missingInFirst,
  },
  {
    name: "lagProfile",
    ...exposed,
    numbers: [],
    nullable: ["rain", "sick", "hind", "yard"],
    run: (rows, options) =>
      estimate.lagProfile({
        ...{ rows, outcome: "sick", byDay: "rain", adjust: ["hind"], groups: ["yard", "horse"], method: "gee" },
        ...{ knots: [2], random: random(), ...options },
      }),
    missing: missingIn,
  },
  {
    name: "heldOutPrediction",
    ...exposed,
    run: (rows, options) => estimate.heldOutPrediction(asked(rows, options)),
    missing: (result: { readonly n: number }) => animals.length - result.n,
  },
  {
    name: "fitConditionalLogistic",
    ...exposed,
    // One stratum is enough for a matched comparison.
    group: null,
    run: (rows, options) =>
      estimate.fitConditionalLogistic({ rows, outcome: "sick", terms: ["wet", "hind"], strata: "yard", ...options }),
    missing: dropped,
  },
  {
    name: "fitMisclassifiedLogistic",
    ...exposed,
    run: (rows, options) =>
      estimate.fitMisclassifiedLogistic({
        ...{ rows, outcome: "sick", terms: ["wet", "hind"], cluster: "yard", sensitivity: 0.95, specificity: 0.97 },
        ...options,
      }),
    missing: dropped,
  },
  {
    name: "shrunkenShares",
    ...exposed,
    run: (rows, options) => estimate.shrunkenShares({ rows, outcome: "sick", terms: ["wet", "hind"], group: "yard", ...options }),
    missing: dropped,
  },
  {
    name: "visitTimingWeights",
    ...exposed,
    rows: periods,
    findings: ["came"],
    nullable: ["wet", "hind"],
    level: false,
    run: (rows) =>
      estimate.visitTimingWeights({
        ...{ rows, visited: "came", numerator: ["hind"], denominator: ["hind", "wet"], cluster: "yard" },
      }),
    missing: missingIn,
  },
  {
    name: "intervalCensoredIncidence",
    rows: gaps,
    run: (rows, options) => estimate.intervalCensoredIncidence(rows as ObservedGap[], options),
    ...{ numbers: ["days"], findings: ["event"], nullable: ["event"], group: "cluster", level: true },
    missing: missingIn,
  },
  {
    name: "casePersistence",
    rows: gaps,
    run: (rows, options) => estimate.casePersistence(rows as ObservedGap[], options),
    ...{ numbers: ["days"], findings: ["event"], nullable: ["event"], group: "cluster", level: true },
    missing: (result: { readonly share: { readonly missing: number } }) => result.share.missing,
  },
  {
    name: "clusteredSurvival",
    rows: times,
    run: (rows, options) =>
      estimate.clusteredSurvival(rows as typeof times, {
        ...{ time: 12, clusterOf: ({ horse }) => horse, random: random(), replicates: 100 },
        ...options,
      }),
    ...{ numbers: ["time"], findings: ["event"], nullable: ["time", "event"], group: "horse", level: true },
    missing: missingIn,
  },
  {
    name: "attributableFraction",
    rows: bounded.filter((row) => row.case !== null),
    run: (rows, options) =>
      estimate.attributableFraction(rows as ExposureRow[], { random: random(), replicates: 100, ...options }),
    ...{ numbers: [], findings: ["case", "exposed"], nullable: ["case", "exposed"], group: "cluster", level: true },
    missing: missingIn,
  },
  {
    name: "survivalAt",
    rows: times,
    run: (rows) => estimate.survivalAt(estimate.kaplanMeier(times), rows as SurvivalTime[], 12),
    ...{ numbers: ["time"], findings: ["event"], nullable: ["time", "event"], group: null, level: false },
    // It counts those at risk; `kaplanMeier` counts what was left out.
    missing: (result: { readonly atRisk: number }) => times.filter(({ time }) => time! >= 12).length - result.atRisk,
  },
  {
    name: "differenceInDifferences",
    rows: looks,
    run: (rows, options) =>
      estimate.differenceInDifferences(rows as YardLook[], {
        ...{ yardId: "yard 0", changedOn: dateOfDay(19_390), random: random(), replicates: 100, ...options },
      }),
    ...{ numbers: [], findings: ["case"], nullable: ["case", "yardId"], group: "yardId", level: true },
    missing: missingIn,
  },
  {
    name: "observerDrift",
    rows: scores,
    run: (rows, options) => estimate.observerDrift(rows as ScoredTwice[], { random: random(), replicates: 100, ...options }),
    ...{ numbers: ["firstGrade", "secondGrade"], findings: [], nullable: ["firstGrade", "secondGrade"], group: "horseId" },
    level: true,
    missing: (result: { readonly all: { readonly missing: number } }) => result.all.missing,
  },
  {
    name: "missingBounds",
    rows: bounded,
    run: (rows, options) => estimate.missingBounds(rows as BoundedRow[], options),
    ...{ numbers: [], findings: ["case", "exposed"], nullable: [], group: "cluster", level: true },
    missing: (result: { readonly prevalence: { readonly missing: number } }) => result.prevalence.missing,
  },
  {
    name: "frontOrHind",
    rows: shaped,
    run: (rows, options) => estimate.frontOrHind(rows as typeof shaped, ["width", "length"], options),
    ...{ numbers: ["width", "length"], findings: [], nullable: ["width", "length"], group: "horseId", level: true },
    missing: (result: { readonly discriminant: Parameters<typeof dropped>[0] }) => dropped(result.discriminant),
  },
  {
    name: "herdGrowth",
    rows: grown,
    run: (rows, options) => estimate.herdGrowth(rows as MarkGrowth[], options),
    ...{ numbers: ["days", "grownMmPerDay"], findings: [], nullable: [], group: "horseId", level: true },
    missing: (result: { readonly short: number }) => result.short,
  },
  {
    name: "toeGain",
    rows: gained,
    run: (rows, options) => estimate.toeGain(rows as ToeGrowth[], options),
    ...{ numbers: ["days", "gainMmPerDay"], findings: [], nullable: [], group: "horseId", level: true },
    missing: missingIn,
  },
  {
    name: "footTrends",
    rows: measured,
    run: (rows, options) => estimate.footTrends(rows as ShapeMeasureRow[], { minimumDetectable: 0.4, ...options }),
    ...{ numbers: ["value"], findings: [], nullable: [], group: "footId", level: true },
    missing: missingIn,
  },
  {
    name: "misclassifiedOddsRatio",
    rows: [{ a: 30, b: 20, c: 12, d: 40 }],
    run: (rows, options) => estimate.misclassifiedOddsRatio(cells(rows), { sensitivity: 0.9, specificity: 0.95 }, options),
    ...{ numbers: ["a", "b", "c", "d"], findings: [], nullable: [], group: null, level: true },
    missing: missingIn,
  },
  {
    name: "funnelLimits",
    rows: [{ target: 0.3, n: 40 }],
    run: (rows, options) => {
      const { target, n } = rows[0] as { target: number; n: number };
      return estimate.funnelLimits(target, n, options);
    },
    ...{ numbers: ["target", "n"], findings: [], nullable: [], group: null, level: true },
    missing: missingIn,
  },
  {
    name: "naturalSpline",
    rows: [{ low: 0, knot: 3, high: 9, value: 4 }],
    run: (rows) => {
      const { low, knot, high, value } = rows[0] as { low: number; knot: number; high: number; value: number };
      return estimate.naturalSpline({ knots: [knot], boundary: [low, high] })(value);
    },
    ...{ numbers: ["low", "knot", "high", "value"], findings: [], nullable: [], group: null, level: false },
    missing: missingIn,
  },
];
