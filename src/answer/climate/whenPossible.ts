import { EstimateError } from "../../estimate/EstimateError.js";

/** The estimate, or in words why these records cannot carry it. */
export function whenPossible<Found>(make: () => Found): Found | string {
  try {
    return make();
  } catch (fault) {
    if (!(fault instanceof EstimateError)) throw fault;
    return `Skipped: ${fault.message}`;
  }
}
