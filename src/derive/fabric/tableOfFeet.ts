import type { FootVisit } from "../../study/FootVisit.js";
import { fabricMeasures } from "./fabricMeasures.js";
import { footSets } from "./footSets.js";
import type { FootTable } from "./FootTable.js";
import { standingFeet } from "./standingFeet.js";

/** The visits of a study as a `FootTable`. Missing: as in `footSets`; a measure that was not taken is NaN. */
export function tableOfFeet(visits: readonly FootVisit[]): FootTable {
  const sets = footSets(visits);
  const fields = fabricMeasures.map(({ field }) => field);
  const values = new Float64Array(sets.length * standingFeet.length * fields.length).fill(NaN);
  const days = new Int32Array(sets.length);
  const starts: number[] = [];
  let at = 0;
  sets.forEach((set, place) => {
    const before = sets[place - 1];
    if (before?.horseId !== set.horseId) starts.push(place);
    else days[place] = (days[place - 1] ?? 0) + (before.visitDate === set.visitDate ? 0 : 1);
    for (const foot of standingFeet) {
      const row = set.rows[foot];
      for (const field of fields) values[at++] = row?.[field] ?? NaN;
    }
  });
  return { sets, starts: Int32Array.from([...starts, sets.length]), days, values };
}
