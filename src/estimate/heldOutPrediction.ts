import { clusterJackknife } from "./climate/clusterJackknife.js";
import { exposureTerm } from "./climate/exposureTerm.js";
import { binomialOutcome } from "./design/binomialOutcome.js";
import { groupIndex } from "./design/groupIndex.js";
import { designMatrix } from "./designMatrix.js";
import { EstimateError } from "./EstimateError.js";
import type { ExposureModel } from "./ExposureModel.js";
import { fitLogistic } from "./fitLogistic.js";
import type { Interval } from "./Interval.js";
import { linearPredictor } from "./numeric/linearPredictor.js";
import { tQuantile } from "./numeric/tQuantile.js";
import type { Term } from "./Term.js";

/** Feet with much the same predicted chance. */
export interface CalibrationBin {
  readonly n: number;
  readonly cases: number;
  /** Mean predicted chance. */
  readonly predicted: number;
  readonly observed: number;
}

/** How well the model foretells feet of groups it has not seen. */
export interface HeldOutPrediction {
  /** Mean squared difference between outcome and predicted chance; 0 is best. */
  readonly brier: number;
  /** The same for the model without the exposure, and for the bare prevalence of the other groups. */
  readonly brierWithout: number;
  readonly brierPrevalence: number;
  /** `brierWithout` less `brier`: what the exposure adds; above 0 it helps. */
  readonly gain: Interval;
  /** Slope of the outcome's log odds on the predicted ones: 1 is right, below 1 too bold. */
  readonly calibrationSlope: Interval;
  /** Log odds by which predictions miss on average: 0 is right. */
  readonly calibrationInTheLarge: Interval;
  readonly bins: readonly CalibrationBin[];
  readonly n: number;
  readonly cases: number;
  readonly groups: number;
  readonly method: string;
}

/**
 * Prediction of held-out yards: each outer group is foretold by a model made without it.
 *
 * Method: population-averaged logistic regression of the exposure and what is held equal, made anew without each group; Brier scores by feet. The gain has limits by
 * leaving out each group's squared errors in turn (t with one degree of freedom less than groups; the models are not made anew). Calibration: logistic
 * regressions on the predicted log odds, clustered by group. Bins: tenths of the feet by predicted chance.
 *
 * Missing: rows with something missing are left out. Errors: `too_few` for fewer than three groups; those of `fitLogistic`.
 *
 * Source: Brier GW (1950) Mon Weather Rev 78:1-3; Cox DR (1958) Biometrika 45:562-565 (calibration).
 */
export function heldOutPrediction(model: ExposureModel): HeldOutPrediction {
  const { rows, outcome, groups, adjust = [], level = 0.95 } = model;
  if (typeof outcome !== "string")
    throw new EstimateError("out_of_range", "Counts cannot be held out foot by foot.", "Give one row a foot.");
  const { term } = exposureTerm(model);
  const outer = groups[0];
  const { used } = designMatrix(rows, [term, ...adjust], { outcome, also: groups });
  const chosen = [...used].map((place) => rows[place]!);
  const all = Int32Array.from(chosen.keys());
  const y = binomialOutcome(chosen, all, outcome).cases;
  const { index, count } = groupIndex(chosen, all, [outer]);
  if (count < 3) throw new EstimateError("too_few", `There are ${count} groups of ${outer}.`, "Holding out needs three or more.");
  const foretold = (terms: readonly Term[]) => heldOut(chosen, outcome, terms, index, count);
  const [full, without, bare] = [foretold([term, ...adjust]), foretold(adjust), foretold([])];
  const errors = Array.from({ length: count }, () => ({ n: 0, full: 0, without: 0, bare: 0 }));
  const rowsOf = chosen.map((_, i) => {
    const own = errors[index[i]!]!;
    const squared = (chance: number) => (y[i]! - chance) ** 2;
    own.n += 1;
    own.full += squared(full[i]!);
    own.without += squared(without[i]!);
    own.bare += squared(bare[i]!);
    return { y: y[i]!, group: index[i]!, logOdds: Math.log(full[i]! / (1 - full[i]!)), chance: full[i]! };
  });
  const total = (pick: (one: (typeof errors)[number]) => number) => errors.reduce((sum, one) => sum + pick(one), 0);
  const n = chosen.length;
  return {
    brier: total((one) => one.full) / n,
    brierWithout: total((one) => one.without) / n,
    brierPrevalence: total((one) => one.bare) / n,
    gain: gainOf(errors, level),
    calibrationSlope: calibrated(rowsOf, ["logOdds"], level),
    calibrationInTheLarge: calibrated(rowsOf, [], level),
    bins: tenths(rowsOf),
    n,
    cases: y.reduce((sum, value) => sum + value, 0),
    groups: count,
    method: `Each of ${count} groups of ${outer} foretold by a logistic regression made without it`,
  };
}

function heldOut(
  rows: readonly object[],
  outcome: string,
  terms: readonly Term[],
  index: Int32Array,
  count: number,
): Float64Array {
  const { columns } = designMatrix(rows, terms, { outcome });
  const chances = new Float64Array(rows.length);
  for (let group = 0; group < count; group += 1) {
    const others = rows.filter((_, i) => index[i] !== group);
    const fit = fitLogistic({ rows: others, outcome, terms, interval: "wald" });
    const eta = linearPredictor(
      columns,
      fit.coefficients.map(({ estimate }) => estimate),
    );
    rows.forEach((_, i) => {
      if (index[i] === group) chances[i] = 1 / (1 + Math.exp(-eta[i]!));
    });
  }
  return chances;
}

function gainOf(
  errors: readonly { readonly n: number; readonly full: number; readonly without: number }[],
  level: number,
): Interval {
  const mean = (list: typeof errors) =>
    list.reduce((sum, one) => sum + one.without - one.full, 0) / list.reduce((sum, one) => sum + one.n, 0);
  const { estimate, se } = clusterJackknife(errors, mean)!;
  const reach = tQuantile((1 + level) / 2, errors.length - 1) * se!;
  const method = `Difference of Brier scores, jackknife over ${errors.length} groups`;
  return { estimate, lower: estimate - reach, upper: estimate + reach, level, method, note: null };
}

interface Foretold {
  readonly y: number;
  readonly group: number;
  readonly logOdds: number;
  readonly chance: number;
}

/** Slope on the predicted log odds, or with them as an offset what is left over. */
function calibrated(rows: readonly Foretold[], terms: readonly string[], level: number): Interval {
  const offset = terms.length === 0 ? { offset: "logOdds" } : {};
  const fit = fitLogistic({ rows, outcome: "y", terms, cluster: "group", level, ...offset });
  const { estimate, lower, upper } = fit.coefficients.at(-1)!;
  return { estimate, lower, upper, level, method: fit.method, note: fit.notes.join(" ") || null };
}

function tenths(rows: readonly Foretold[]): CalibrationBin[] {
  const sorted = [...rows].sort((a, b) => a.chance - b.chance);
  return Array.from({ length: 10 }, (_, tenth) => {
    const part = sorted.slice(Math.floor((tenth * rows.length) / 10), Math.floor(((tenth + 1) * rows.length) / 10));
    const [cases, chances] = [part.filter(({ y }) => y === 1).length, part.reduce((sum, { chance }) => sum + chance, 0)];
    return { n: part.length, cases, predicted: chances / part.length, observed: cases / part.length };
  }).filter(({ n }) => n > 0);
}
