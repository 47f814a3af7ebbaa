import { EstimateError } from "../EstimateError.js";

/**
 * Checks choices that a compiler without strict settings lets through.
 *
 * Errors: `out_of_range` for anything but one or two groups, or another method than `quadrature` and `laplace`.
 */
export function requireChoices(groups: readonly unknown[], method: string): void {
  if (!Array.isArray(groups) || groups.length < 1 || groups.length > 2) {
    throw new EstimateError(
      "out_of_range",
      `Groups are given as ${JSON.stringify(groups)}; one or two kinds can be fitted.`,
      'Give a list such as ["horse"] or ["yard", "horse"], the outer first.',
    );
  }
  if (method === "quadrature" || method === "laplace") return;
  throw new EstimateError("out_of_range", `There is no method ${JSON.stringify(method)}.`, 'Ask for "quadrature" or "laplace".');
}
