import type { Foot } from "../study/Foot.js";

/** Which side of the horse a foot is from, seen from the horse: left is near, right is off; null for a specimen, also of known side, since it is no foot of a live horse. @private */
export function footSide(foot: Foot): "left" | "right" | null {
  if (foot === "LF" || foot === "LH") return "left";
  return foot === "RF" || foot === "RH" ? "right" : null;
}
