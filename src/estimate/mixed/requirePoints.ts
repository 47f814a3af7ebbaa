import { EstimateError } from "../EstimateError.js";
import type { QuadraturePoints } from "../numeric/nestedQuadrature.js";

const MOST = 200;

/**
 * Quadrature points as asked for, one number a group; undefined when not.
 *
 * Errors: `length_mismatch`; `out_of_range` for anything but whole numbers from 1 to 200.
 */
export function requirePoints(nodes: readonly number[] | undefined, groups: readonly string[]): QuadraturePoints | undefined {
  if (nodes === undefined) return undefined;
  if (nodes.length !== groups.length) {
    throw new EstimateError(
      "length_mismatch",
      `${nodes.length} numbers of nodes are given for ${groups.length} kinds of group.`,
      "Give one number a group, in the order of groups.",
    );
  }
  for (const count of nodes) {
    if (Number.isInteger(count) && count >= 1 && count <= MOST) continue;
    throw new EstimateError("out_of_range", `${count} nodes were asked for.`, `Ask for a whole number from 1 to ${MOST}.`);
  }
  return { outer: nodes.length === 2 ? nodes[0]! : 1, inner: nodes.at(-1)! };
}
