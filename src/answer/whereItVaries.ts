import type { Table } from "../chart/Table.js";
import type { FootCase } from "../derive/FootCase.js";
import { thrushCases } from "../derive/thrushCases.js";
import { EstimateError } from "../estimate/EstimateError.js";
import { fitMixedLogistic, type MixedLogisticFit } from "../estimate/fitMixedLogistic.js";
import type { RandomIntercept } from "../estimate/mixed/RandomIntercept.js";
import type { Term } from "../estimate/Term.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { caseWords } from "./caseWords.js";
import { comparableTerms } from "./fair/comparableTerms.js";
import { capital } from "../chart/parts/capital.js";
import { listed } from "./words/listed.js";
import { percentage } from "./words/percentage.js";
import { rounded } from "./words/rounded.js";
import { tooFewHorses } from "./words/tooFewHorses.js";
import { withInterval } from "./words/withInterval.js";

const { id, question } = asked("where-it-varies");
/** Variance of a single look on the log-odds scale: that of the logistic distribution. */
const LOOK_VARIANCE = Math.PI ** 2 / 3;

/** Spread of the log odds of thrush between yards, horses and feet, and observers beside each other. Unit: a graded look at a foot. */
export function whereItVaries(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const cases = thrushCases(study).filter(({ missing }) => missing !== "specimen");
  const graded = cases.filter(({ thrush, yardId }) => thrush !== null && yardId !== null);
  const horses = new Set(graded.map(({ horseId }) => horseId)).size;
  const notEnough = (reason: string): NotEnoughData => ({ kind: "not_enough_data", id, question, reason });
  if (horses < minimumHorses)
    return notEnough(tooFewHorses(horses, minimumHorses, "a graded frog at a known yard", "give no spread"));
  const terms = comparableTerms(graded);
  const yards = fitted(graded, terms, ["yardId", "horseId"], level);
  const feet = fitted(graded, terms, ["horseId", "foot"], level);
  if (feet instanceof EstimateError) return notEnough(`The spread between horses cannot be measured: ${feet.message}`);
  const { layers, horse } = layersOf(yards, feet);
  const total = layers.reduce((sum, { spread }) => sum + spread.sd ** 2, LOOK_VARIANCE);
  const share = (variance: number) => percentage(variance / total);
  const ranked = layers.filter(({ spread }) => spread.sd > 0).sort((a, b) => b.spread.sd - a.spread.sd);
  const none = layers.filter(({ spread }) => spread.sd === 0).map(({ name }) => name);
  const observers = observersTable(graded, terms, level, minimumHorses);
  return {
    kind: "answer",
    id,
    question,
    sentence: `On the scale of log odds ${ranked.length === 0 ? "" : `${listed(ranked.map(({ name, spread }) => `${name} account for ${share(spread.sd ** 2)}`))} of the variation; `}${share(LOOK_VARIANCE)} lies between looks at one foot${none.length === 0 ? "" : `, and ${listed(none)} differ by no more than chance would make them`}. Between two horses alike in all else the odds of thrush differ by a median factor of ${factorOf(horse, level)}.`,
    tables: [spreadTable(layers, total), ...observers],
    charts: [],
    cautions: [
      "Variation between looks at one foot holds weather, trimming, dressing and chance together.",
      "Spread says how much units differ, not why. That of a few yards is hardly known.",
      ...(observers.length === 0
        ? ["Observers are not set beside each other: fewer than two of them graded enough horses."]
        : ["Observers went to yards and horses not by lot; part of what differs between them may be what they were shown."]),
    ],
    method: {
      unit: "a graded look at a foot",
      n: feet.n,
      missing: cases.length - feet.n,
      text: `Case: ${caseWords(study.settings)}. Two logistic regressions on season and front or hind feet by exact maximum likelihood: random intercepts of yards and horses in them, and of horses and feet of them, since only two kinds that lie within each other can be fitted at once. Spread of yards and horses from the first, of feet from the second; a look has the variance pi squared over 3. Median factor: of two units drawn at random, the odds of the worse over those of the better. Observers: the same by the Laplace approximation.${yards instanceof EstimateError ? ` Yards left out: ${yards.message}` : ""} ${[...new Set([...(yards instanceof EstimateError ? [] : yards.notes), ...feet.notes])].join(" ")}`.trim(),
      links: ["fitMixedLogistic", "thrushCases"],
    },
  };
}

function fitted(
  rows: readonly FootCase[],
  terms: readonly Term[],
  groups: readonly [string, string],
  level: number,
  method: "quadrature" | "laplace" = "quadrature",
): MixedLogisticFit | EstimateError {
  try {
    return fitMixedLogistic({ rows, outcome: "thrush", terms, groups, level, method });
  } catch (fault) {
    if (fault instanceof EstimateError) return fault;
    throw fault;
  }
}

interface Layer {
  readonly name: string;
  readonly spread: RandomIntercept;
}

function layersOf(
  yards: MixedLogisticFit | EstimateError,
  feet: MixedLogisticFit,
): { readonly layers: readonly Layer[]; readonly horse: RandomIntercept } {
  const [horsesAlone, footInHorse] = feet.groups as [RandomIntercept, RandomIntercept];
  const [yard, horse] =
    yards instanceof EstimateError ? [null, horsesAlone] : (yards.groups as [RandomIntercept, RandomIntercept]);
  const layers = [
    ...(yard === null ? [] : [{ name: "yards", spread: yard }]),
    { name: "horses", spread: horse },
    { name: "feet of one horse", spread: footInHorse },
  ];
  return { layers, horse };
}

function factorOf({ sd, lower, upper, medianOddsRatio }: RandomIntercept, level: number): string {
  // The median odds ratio rises with the SD, so that its limits are those of the SD carried over.
  const carried = (limit: number | null) =>
    limit === null || sd === 0 ? null : Math.exp((Math.log(medianOddsRatio) / sd) * limit);
  return withInterval({ estimate: medianOddsRatio, lower: carried(lower), upper: carried(upper), level }, (value) =>
    rounded(value, 1),
  );
}

function spreadTable(layers: readonly Layer[], total: number): Table {
  const rows = layers.map(({ name, spread: { count, sd, lower, upper, medianOddsRatio } }) => ({
    ...{ between: capital(name), count, sd, lower, upper, share: (sd * sd) / total, medianOddsRatio },
  }));
  return {
    caption: "Spread of the log odds of thrush",
    columns: [
      { name: "between", title: "Between" },
      { name: "count", title: "Number" },
      { name: "sd", title: "SD", digits: 2 },
      { name: "lower", title: "From", digits: 2 },
      { name: "upper", title: "To", digits: 2 },
      { name: "share", title: "Of the variation", percent: true },
      { name: "medianOddsRatio", title: "Median factor of odds", digits: 2 },
    ],
    rows: [
      ...rows,
      {
        ...{ between: "Looks at one foot", count: null, sd: Math.sqrt(LOOK_VARIANCE), lower: null, upper: null },
        ...{ share: LOOK_VARIANCE / total, medianOddsRatio: null },
      },
    ],
  };
}

/** Odds of finding thrush of each observer against the one who graded most; none when fewer than two graded enough horses. */
function observersTable(graded: readonly FootCase[], terms: readonly Term[], level: number, minimumHorses: number): Table[] {
  const named = graded.filter(({ observerId }) => observerId !== null);
  const horsesOf = (rows: readonly FootCase[]) => new Set(rows.map(({ horseId }) => horseId)).size;
  const observers = [...grouped(named, ({ observerId }) => observerId ?? "")].filter(
    ([, rows]) => horsesOf(rows) >= minimumHorses,
  );
  observers.sort(([a, x], [b, y]) => y.length - x.length || (a < b ? -1 : 1));
  if (observers.length < 2) return [];
  const reference = observers[0]?.[0] ?? "";
  const rows = observers.flatMap(([, own]) => own);
  const fit = fitted(rows, [...terms, { column: "observerId", reference }], ["yardId", "horseId"], level, "laplace");
  if (fit instanceof EstimateError) return [];
  const ratioOf = (name: string) => fit.coefficients.find((row) => row.name === `observerId: ${name}`)?.oddsRatio ?? null;
  return [
    {
      caption: `Odds that an observer finds thrush, against those of ${reference}, allowing for yard, horse, season and front or hind feet`,
      columns: [
        { name: "observer", title: "Observer" },
        { name: "horses", title: "Horses" },
        { name: "looks", title: "Graded looks" },
        { name: "ratio", title: "Odds ratio", digits: 2 },
        { name: "lower", title: "From", digits: 2 },
        { name: "upper", title: "To", digits: 2 },
      ],
      rows: observers.map(([observer, own]) => {
        const ratio = ratioOf(observer);
        return {
          ...{ observer, horses: horsesOf(own), looks: own.length },
          ...{
            ratio: observer === reference ? 1 : (ratio?.estimate ?? null),
            lower: ratio?.lower ?? null,
            upper: ratio?.upper ?? null,
          },
        };
      }),
    },
  ];
}
