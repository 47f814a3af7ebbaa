import type { Chart } from "../../chart/Chart.js";
import { survivalChart } from "../../chart/survivalChart.js";
import { requiredDay } from "../../derive/requiredDay.js";
import type { ThrushEpisode } from "../../derive/thrushEpisodes.js";
import { clusterBootstrap } from "../../estimate/clusterBootstrap.js";
import { kaplanMeier } from "../../estimate/kaplanMeier.js";
import { seededRandom } from "../../estimate/numeric/seededRandom.js";
import { grouped } from "../../study/grouped.js";
import { seedOfAnswers } from "../seedOfAnswers.js";
import { survivalLine } from "../survivalLine.js";
import { rounded } from "../words/rounded.js";
import { withInterval } from "../words/withInterval.js";

/** How long a bout lasts until the foot is seen clear, as a curve. */
export interface ClearTimes {
  /** `Half of them were seen clear within 45 days (95% interval 42 to 49).` */
  readonly sentence: string;
  readonly chart: Chart;
  readonly method: string;
}

const readAtDays = [42, 84, 126];
const leastBouts = 10;

/**
 * Days from the first visit at which a foot that had been clear was seen with thrush to the first visit at which it was seen clear again.
 * Null with fewer than ten bouts.
 */
export function timeToClear(episodes: readonly ThrushEpisode[], level: number): ClearTimes | null {
  const bouts = episodes
    .filter(({ kind }) => kind !== "from_the_start")
    .map(({ horseId, firstSeen, lastSeen, clearOn }) => ({
      horseId,
      time: requiredDay(clearOn ?? lastSeen) - requiredDay(firstSeen),
      event: clearOn !== null,
    }));
  if (bouts.length < leastBouts || bouts.every(({ event }) => !event)) return null;
  const median = clusterBootstrap(
    [...grouped(bouts, ({ horseId }) => horseId).values()],
    (rows) => kaplanMeier(rows).median.estimate,
    {
      random: seededRandom(seedOfAnswers),
      replicates: 500,
      level,
    },
  );
  const days = (value: number) => rounded(value, 0);
  const title =
    median.estimate === null
      ? "Fewer than half of the bouts were seen to clear"
      : `Half of the bouts were seen clear within ${days(median.estimate)} days`;
  const sentence =
    median.estimate === null
      ? `${title}.`
      : `Half of them were seen clear within ${withInterval({ ...median, estimate: median.estimate }, (value) => `${days(value)} days`, days)}.`;
  const chart = survivalChart([survivalLine("bouts", bouts, { level, readAt: readAtDays })], {
    title,
    timeTitle: "Days since it was first seen",
    shareTitle: "Share of bouts not yet seen clear",
    unit: "bouts that began after a clear visit",
    level,
    intervalNote: "taking bouts as independent",
  });
  return {
    sentence,
    chart,
    method:
      "Time to clear: Kaplan-Meier from the first visit with thrush to the first clear one, of bouts that began after a clear visit, those still standing censored at their last visit; visits come weeks apart, so the foot was clear some time before. The interval of the median is from 500 resamples of whole horses.",
  };
}
