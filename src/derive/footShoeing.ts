import type { FootVisit } from "../study/FootVisit.js";
import type { HorseStay } from "../study/HorseStay.js";
import { footEnd } from "./footEnd.js";

/**
 * Whether a foot goes bare or shod: null when nothing says so.
 *
 * Method: what was found on the foot at the visit comes first (`bare`, or a shoe in any state, a lost one too); else the usual state
 * of the horse, where `fronts` means shod in front and bare behind.
 *
 * Missing: null when neither is recorded, or when only the front feet are shod and the end of the foot is not known.
 */
export function footShoeing(
  visit: Pick<FootVisit, "foot" | "shoeState">,
  stay: Pick<HorseStay, "shod"> | null,
): "bare" | "shod" | null {
  if (visit.shoeState !== null) return visit.shoeState === "bare" ? "bare" : "shod";
  const usual = stay?.shod ?? null;
  if (usual === "fronts") {
    const end = footEnd(visit.foot);
    return end === null ? null : end === "fore" ? "shod" : "bare";
  }
  return usual === "all" ? "shod" : usual;
}
