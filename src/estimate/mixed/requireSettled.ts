import { EstimateError } from "../EstimateError.js";
import type { NestedFit } from "../numeric/fitNested.js";

/** An SD of the log odds above this puts nearly every group at all cases or none. */
const RUNAWAY_SD = 15;
/** Standard errors from the summit that nobody would notice, and that everybody would. */
const NEAR = 1e-4;
const FAR = 1e-2;
/** Change of the log-likelihood with more nodes, in parts of it, that says the rule is too coarse. */
const COARSE = 1e-6;

/**
 * Checks that a fit came to rest on a summit. Returns what is left to say about it, null when nothing.
 *
 * Errors: `separation` when an SD ran away; `not_converged` otherwise.
 */
export function requireSettled(fit: NestedFit, places: readonly number[], groups: readonly string[]): string | null {
  const runaway = groups.find((_, g) => fit.theta[places[g]!]! > RUNAWAY_SD);
  if (runaway !== undefined) {
    throw new EstimateError(
      "separation",
      `The SD between groups of ${runaway} grows without end: nearly every one is all cases or none.`,
      `Count each group of ${runaway} once, or leave it out of the groups.`,
    );
  }
  if (!(fit.definiteness > 1e-9)) {
    throw new EstimateError(
      "not_converged",
      "The likelihood has no single summit: some combination of terms and spreads between groups cannot be told apart.",
      "Use fewer terms or fewer kinds of group.",
    );
  }
  if (!(fit.distance < FAR)) {
    throw new EstimateError(
      "not_converged",
      `The fit did not settle: the next step would go ${fit.distance} standard errors.`,
      fit.points === null ? "Use fewer terms, or start elsewhere." : "Use more nodes, or fewer terms.",
    );
  }
  if (fit.change !== null && Math.abs(fit.change) > COARSE * Math.max(1, Math.abs(fit.logLik))) {
    return `Quadrature is coarse: more nodes change the log-likelihood by ${fit.change.toPrecision(2)}.`;
  }
  if (fit.distance <= NEAR) return null;
  return "The maximum was not met exactly; the estimates are off by less than a hundredth of a standard error.";
}
