import { EstimateError } from "../EstimateError.js";
import { requireNumber } from "../numeric/requireNumber.js";

const units = [
  { words: "centimetres", perUnit: 10 },
  { words: "inches", perUnit: 25.4 },
  { words: "metres", perUnit: 1000 },
  { words: "tenths of a millimetre", perUnit: 0.1 },
];

/**
 * Checks that an outline is as large as expected, by the diameter of a circle of its area, and says which unit would make it so.
 *
 * Errors: `out_of_range`; `not_a_number` for limits that are no numbers.
 */
export function requireExpectedSize(area: number, [low, high]: readonly [number, number]): void {
  requireNumber("smallest size", low);
  requireNumber("largest size", high);
  if (!(low >= 0 && low < high)) {
    throw new EstimateError("out_of_range", `The expected size is ${low} to ${high} mm.`, "Give the smaller size first, in mm.");
  }
  const size = 2 * Math.sqrt(area / Math.PI);
  if (size >= low && size <= high) return;
  const across = Number(size.toPrecision(3));
  const unit = units.find(({ perUnit }) => size * perUnit >= low && size * perUnit <= high);
  throw new EstimateError(
    "out_of_range",
    `The outline is ${across} wide${unit === undefined ? "" : ` (${unit.words}?)`}, where ${low} to ${high} mm is expected.`,
    unit === undefined
      ? "Check the unit and the scale of the tracing; nothing was converted."
      : `If it was traced in ${unit.words}, multiply x and y by ${unit.perUnit}; nothing was converted.`,
  );
}
