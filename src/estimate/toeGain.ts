import type { ToeGrowth } from "../derive/toeGrowth.js";
import { requireRows } from "./design/requireRows.js";
import { EstimateError } from "./EstimateError.js";
import { fitMixedLinear, type MixedLinearFit } from "./fitMixedLinear.js";
import type { Interval } from "./Interval.js";
import { normalQuantile } from "./numeric/normalQuantile.js";
import { requireCount } from "./numeric/requireCount.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireNumber } from "./numeric/requireNumber.js";

/** Gain of the toe, mm a day, of a horse or of all. */
export interface GroupGain extends Interval {
  readonly name: string;
  readonly estimate: number;
  readonly n: number;
  readonly horses: number;
}

/** Gain of the toe between trims, pooled over horses. */
export interface ToeGainByHorse {
  readonly n: number;
  readonly mean: GroupGain;
  /** Each horse, drawn towards the mean the less was seen of it. */
  readonly ofHorses: readonly GroupGain[];
  readonly horseSd: number;
  readonly method: string;
}

/**
 * Gain of the toe from after one trim to before the next, mm a day, pooled over horses with a linear mixed model. Keep shod and bare feet
 * apart before.
 *
 * Method: gain a day of each span of `leastDays` (21) days or more on a random intercept of the horse; limits of a horse from the spread of its
 * conditional mode and the error of the mean.
 *
 * Missing: null when the model cannot be fitted: one horse alone, or no horse with two spans.
 *
 * Errors (`EstimateError`): `not_a_number`; `not_a_count`; `out_of_range` for a row that is no record or for a level not between 0 and 1; `not_converged`.
 *
 * Source: as in `toeGrowth` and `fitMixedLinear`.
 */
export function toeGain(
  rows: readonly ToeGrowth[],
  options: { readonly level?: number; readonly leastDays?: number } = {},
): ToeGainByHorse | null {
  const level = requireLevel(options.level ?? 0.95);
  const leastDays = requireCount("least number of days", options.leastDays ?? 21);
  requireRows(rows);
  rows.forEach(({ days, gainMmPerDay }) => {
    requireNumber("days of a span", days);
    requireNumber("gain of a span", gainMmPerDay);
  });
  const used = rows.filter(({ days }) => days >= leastDays);
  const fit = fitted(used, level);
  if (fit === null) return null;
  const intercept = fit.coefficients[0]!;
  const z = normalQuantile((1 + level) / 2);
  const { estimate, lower, upper } = intercept;
  const modes = fit.conditionalModes[0]!;
  return {
    n: used.length,
    mean: {
      ...{ name: "all", n: used.length, horses: modes.length, estimate, lower, upper, level },
      ...{ method: fit.method, note: null },
    },
    ofHorses: modes.map(({ group, mode, sd }) => {
      const half = z * Math.hypot(sd, intercept.se);
      return {
        ...{ name: String(group), n: used.filter(({ horseId }) => horseId === String(group)).length, horses: 1 },
        ...{ estimate: estimate + mode, lower: estimate + mode - half, upper: estimate + mode + half, level },
        ...{ method: "conditional mode of the horse about the mean", note: null },
      };
    }),
    horseSd: fit.groups[0]!.sd,
    method: `${fit.method}.`,
  };
}

function fitted(rows: readonly ToeGrowth[], level: number): MixedLinearFit | null {
  try {
    return fitMixedLinear({ rows, outcome: "gainMmPerDay", terms: [], groups: ["horseId"], level });
  } catch (fault) {
    if (fault instanceof EstimateError && fault.code !== "out_of_range") return null;
    throw fault;
  }
}
