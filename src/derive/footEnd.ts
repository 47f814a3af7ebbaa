import type { Foot } from "../study/Foot.js";

/** Which end of the horse a foot is from. Known of most specimens too; null for one of unknown end. @private */
export function footEnd(foot: Foot): "fore" | "hind" | null {
  if (foot === "U") return null;
  return foot === "F" || foot.charAt(1) === "F" ? "fore" : "hind";
}
