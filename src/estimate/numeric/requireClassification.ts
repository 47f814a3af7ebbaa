import type { ClassifiedOutcome } from "../ClassifiedOutcome.js";
import { EstimateError } from "../EstimateError.js";
import { requireWithin } from "./requireWithin.js";

/**
 * Checks sensitivity and specificity; returns their sum less 1.
 *
 * Errors: `not_a_number`; `out_of_range` outside 0 to 1, or when the sum is 1 or less, so that the examination tells nothing.
 */
export function requireClassification({ sensitivity, specificity }: ClassifiedOutcome): number {
  requireWithin("sensitivity", sensitivity, 0, 1);
  requireWithin("specificity", specificity, 0, 1);
  const informed = sensitivity + specificity - 1;
  if (informed > 1e-9) return informed;
  throw new EstimateError(
    "out_of_range",
    `Sensitivity ${sensitivity} and specificity ${specificity} add up to 1 or less, so the examination tells nothing.`,
    "Give values whose sum is above 1.",
  );
}
