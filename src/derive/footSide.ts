import type { Foot } from "../study/Foot.js";

/** Which side of the horse a foot is from, seen from the horse: left is near, right is off; null for a specimen of unknown side. @private */
export function footSide(foot: Foot): "left" | "right" | null {
  if (foot === "F" || foot === "H" || foot === "U") return null;
  return foot === "LF" || foot === "LH" ? "left" : "right";
}
