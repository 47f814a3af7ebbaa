import { doubleScores } from "../../derive/doubleScores.js";
import { observerDrift, type ObserverDrift } from "../../estimate/observerDrift.js";
import { seededRandom } from "../../estimate/numeric/seededRandom.js";
import { grouped } from "../../study/grouped.js";
import type { Study } from "../../study/Study.js";
import { climateSeed } from "./asked.js";

/** Agreement of the pair of observers who scored most feet together, by quarter; or why there is none. */
export function driftOf(study: Study): (ObserverDrift & { readonly pair: string }) | string {
  const pairs = [...grouped(doubleScores(study.visits), (row) => `${row.firstObserverId} and ${row.secondObserverId}`)];
  const most = pairs.sort((a, b) => b[1].length - a[1].length || (a[0] < b[0] ? -1 : 1))[0];
  if (most === undefined)
    return "No foot was scored by two observers on one day, so agreement and drift of observers cannot be told.";
  const [pair, rows] = most;
  return {
    pair,
    ...observerDrift(rows, { random: seededRandom(climateSeed).stream("drift"), replicates: 300, level: study.settings.level }),
  };
}
