import { EstimateError } from "../EstimateError.js";
import type { DesignColumn } from "./DesignColumn.js";

/** How the numbers of a term are moved and rescaled; see `Term`. */
export interface Scaling {
  readonly centre?: boolean | number;
  readonly scale?: boolean | number;
  readonly per?: number;
}

/**
 * A column of numbers less its centre, over its unit.
 *
 * Errors: `out_of_range` when both `scale` and `per` are given or the unit is not a positive number; `no_variation` when a
 * standard deviation is asked for and there is none.
 */
export function scaledColumn(
  column: string,
  values: Float64Array,
  { centre = false, scale = false, per }: Scaling,
): DesignColumn {
  if (scale !== false && per !== undefined) {
    throw new EstimateError("out_of_range", `Term "${column}" gives both scale and per.`, "Give one of them: both set the unit.");
  }
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const middle = typeof centre === "number" ? centre : centre ? mean : 0;
  const unit = scale === true ? standardDeviation(values, mean) : scale === false ? (per ?? 1) : scale;
  if (scale === true && !(unit > 0)) {
    throw new EstimateError("no_variation", `Column "${column}" has no spread to scale by.`, "Leave the term out.");
  }
  if (!(unit > 0 && Number.isFinite(unit) && Number.isFinite(middle))) {
    throw new EstimateError(
      "out_of_range",
      `Term "${column}" has centre ${middle} and unit ${unit}.`,
      "The centre must be a finite number, the unit a positive one.",
    );
  }
  const suffix = scale === true ? " per SD" : unit === 1 ? "" : ` per ${unit}`;
  return { name: column + suffix, values: values.map((value) => (value - middle) / unit) };
}

function standardDeviation(values: Float64Array, mean: number): number {
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
