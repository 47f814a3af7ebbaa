import type { RepeatedMeasure } from "../derive/repeatedMeasures.js";
import type { ShapeMeasure } from "../derive/ShapeMeasure.js";
import { grouped } from "../study/grouped.js";
import { blandAltman, type LimitsOfAgreement } from "./blandAltman.js";
import { EstimateError } from "./EstimateError.js";
import { type IccEstimate, intraclassCorrelation } from "./intraclassCorrelation.js";
import { minimumDetectableChange } from "./minimumDetectableChange.js";
import { type MeasurementError, standardErrorOfMeasurement } from "./standardErrorOfMeasurement.js";

/** How well one measure is repeated by another observer. */
export interface MeasureRepeatability {
  readonly measure: ShapeMeasure;
  /** Feet measured twice, and their horses. */
  readonly feet: number;
  readonly horses: number;
  /** Form 2,1; null, with `note`, when it cannot be had. */
  readonly icc: IccEstimate | null;
  readonly sem: MeasurementError;
  /** Smallest change between two readings that is more than reading error, in the unit of the measure. */
  readonly minimumDetectable: number;
  /** First less second observer, in the order of their codes; null with fewer than three feet. */
  readonly agreement: LimitsOfAgreement | null;
  readonly note: string | null;
}

/**
 * Repeatability of each shape measure from feet that two observers measured on one day, in the order in which measures first come.
 *
 * Method: intraclass correlation of form 2,1, standard error of measurement, minimum detectable change and limits of agreement of the
 * pairs of `repeatedMeasures`. Several feet of one horse count as several feet: limits are a little too narrow. The correlation depends
 * on how unlike the feet are, the standard error does not.
 *
 * Missing: a measure without a pair has no row.
 *
 * Errors (`EstimateError`): `not_a_number`; `out_of_range` for a level not between 0 and 1.
 *
 * Source: as in `intraclassCorrelation`, `standardErrorOfMeasurement`, `minimumDetectableChange` and `blandAltman`.
 */
export function shapeRepeatability(
  repeats: readonly RepeatedMeasure[],
  options: { readonly level?: number } = {},
): MeasureRepeatability[] {
  return [...grouped(repeats, ({ measure }) => measure)].map(([measure, of]): MeasureRepeatability => {
    const pairs = of.map(({ first, second }) => [first, second] as const);
    const sem = standardErrorOfMeasurement(pairs, options);
    const { icc, note } = correlation(pairs, options);
    return {
      ...{ measure, feet: pairs.length, horses: new Set(of.map(({ horseId }) => horseId)).size, icc, sem },
      minimumDetectable: minimumDetectableChange(sem.estimate, options),
      agreement: of.length < 3 ? null : blandAltman(of, options),
      note,
    };
  });
}

function correlation(
  pairs: readonly (readonly [number, number])[],
  options: { readonly level?: number },
): Pick<MeasureRepeatability, "icc" | "note"> {
  try {
    return { icc: intraclassCorrelation(pairs, { ...options, form: "2,1" }), note: null };
  } catch (fault) {
    if (fault instanceof EstimateError && (fault.code === "too_few" || fault.code === "no_variation"))
      return { icc: null, note: fault.message };
    throw fault;
  }
}
