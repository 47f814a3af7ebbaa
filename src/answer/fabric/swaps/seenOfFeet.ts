import type { FootTable } from "../../../derive/fabric/FootTable.js";
import { standingFeet } from "../../../derive/fabric/standingFeet.js";
import type { FootVisit } from "../../../study/FootVisit.js";
import type { FootLooks } from "./FootLooks.js";

const LEAST_SHARE = 0.01;
const colours: readonly FootVisit["hornColour"][] = ["dark", "light", "striped"];

/** What was seen of every foot; of several sets of a day the first that says something counts for all of them. */
export function seenOfFeet({ sets, starts, days }: FootTable): FootLooks {
  const feet = standingFeet.length;
  const hornColour = new Int8Array(sets.length * feet).fill(-1);
  const shoe = new Int8Array(sets.length * feet).fill(-1);
  const markMm = new Float64Array(sets.length * feet).fill(NaN);
  const horseStarts = new Set(starts);
  let [looks, marks, from] = [0, 0, 0];
  for (let set = 0; set < sets.length; set++) {
    if (horseStarts.has(set) || days[set] !== days[set - 1]) from = set;
    for (const [place, foot] of standingFeet.entries()) {
      const row = sets[set]?.rows[foot];
      if (row === undefined) continue;
      const at = from * feet + place;
      if (hornColour[at] === -1) hornColour[at] = row.hornColour === null ? -1 : colours.indexOf(row.hornColour);
      if (shoe[at] === -1 && row.shoeState !== null) shoe[at] = row.shoeState === "bare" ? 0 : 1;
      if (Number.isNaN(markMm[at]) && row.markKind === "abscess_track") markMm[at] = row.markBelowCoronetMm ?? NaN;
      looks += 1;
      if (row.markKind === "abscess_track") marks += 1;
    }
  }
  for (let set = 1; set < sets.length; set++) {
    if (horseStarts.has(set) || days[set] !== days[set - 1]) continue;
    for (let at = set * feet; at < (set + 1) * feet; at++) {
      hornColour[at] = hornColour[at - feet] ?? -1;
      shoe[at] = shoe[at - feet] ?? -1;
      markMm[at] = markMm[at - feet] ?? NaN;
    }
  }
  return { hornColour, shoe, markMm, newMarkShare: Math.max(LEAST_SHARE, marks / Math.max(1, looks)) };
}
