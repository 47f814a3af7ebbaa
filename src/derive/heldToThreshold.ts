import type { ShapeFlag } from "./ShapeFlag.js";
import { shapeThresholds } from "./shapeThresholds.js";

/** A value held to the threshold that a study sets for a flag, with the source of that threshold. */
export function heldToThreshold(flag: ShapeFlag["flag"], value: number, threshold: number): ShapeFlag {
  const { rule, published } = shapeThresholds[flag];
  const raised = rule === "below" ? value < threshold : rule === "above" ? value > threshold : value >= threshold;
  const source = published.find((entry) => entry.threshold === threshold)?.source ?? "set for this study, no source given";
  return { flag, raised, value, rule, threshold, source };
}
