import { EstimateError } from "../EstimateError.js";

/**
 * Checks that one kind of group is named, or two different ones.
 *
 * Errors: `out_of_range` for anything else.
 */
export function requireGroups(groups: readonly unknown[]): void {
  if (Array.isArray(groups) && (groups.length === 1 || groups.length === 2) && new Set(groups).size === groups.length) return;
  throw new EstimateError(
    "out_of_range",
    `Groups are given as ${JSON.stringify(groups)}; one kind, or two different ones, can be fitted.`,
    'Give a list such as ["horse"] or ["yard", "horse"], the outer first.',
  );
}
