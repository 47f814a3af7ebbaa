/**
 * Why an estimate cannot be computed.
 * - `not_a_number`: NaN, an infinite number or something that is no number where a number is needed.
 * - `not_a_date`: text that is no `YYYY-MM-DD` day where a date is needed.
 * - `unknown_column`: a column that no row has.
 * - `not_a_count`: a number of things that is negative or not whole.
 * - `out_of_range`: a number outside the range the definition allows.
 * - `empty`: nothing to compute from.
 * - `too_few`: something is there, but less than the definition needs.
 * - `length_mismatch`: inputs that belong together differ in length or shape.
 * - `no_variation`: all values are the same where a spread is needed.
 * - `collinear`: columns of a design repeat each other.
 * - `separation`: a column tells the outcome without error, so its coefficient has no finite estimate.
 * - `not_converged`: an iteration ran out before it settled.
 * - `self_crossing`: an outline crosses or touches itself.
 * - `open_outline`: an outline does not end near where it began.
 */
export type EstimateErrorCode =
  | "not_a_number"
  | "not_a_date"
  | "unknown_column"
  | "not_a_count"
  | "out_of_range"
  | "empty"
  | "too_few"
  | "length_mismatch"
  | "no_variation"
  | "collinear"
  | "separation"
  | "not_converged"
  | "self_crossing"
  | "open_outline";
