import type { Foot } from "../study/Foot.js";

/** Which end of the horse a foot is from. Known of a specimen of unknown side too; null for one of unknown end. @private */
export function footEnd(foot: Foot): "fore" | "hind" | null {
  if (foot === "U") return null;
  return foot === "LF" || foot === "RF" || foot === "F" ? "fore" : "hind";
}
