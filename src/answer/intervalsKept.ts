import { type IntervalKeepingRow, intervalKeepingChart } from "../chart/intervalKeepingChart.js";
import type { TrimInterval } from "../derive/TrimInterval.js";
import { trimIntervals } from "../derive/trimIntervals.js";
import { clusteredProportion } from "../estimate/clusteredProportion.js";
import { grouped } from "../study/grouped.js";
import { capital } from "../chart/parts/capital.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { counted } from "./words/counted.js";
import { howSure } from "./words/howSure.js";

const { id, question } = asked("intervals-kept");

/** Share of intervals between routine visits that kept to the plan, by yard. Unit: an interval, horses as clusters. */
export function intervalsKept(study: Study): Answer | NotEnoughData {
  const { settings } = study;
  const intervals = trimIntervals(study);
  const ended = intervals.filter(({ status }) => status === "kept" || status === "early" || status === "late");
  const horses = grouped(ended, (row) => row.horseId);
  if (horses.size < settings.minimumHorses) {
    const reason = `${capital(counted(horses.size, "horse has", "horses have"))} two routine visits with an agreed interval between them; fewer than ${settings.minimumHorses} give no share.`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const clusters = [...horses.values()].map((rows) => ({ cases: countOf(rows, "kept"), n: rows.length }));
  const kept = clusteredProportion(clusters, { level: settings.level });
  const other = (status: TrimInterval["status"]) => intervals.filter((row) => row.status === status).length;
  const yards = yardRows(ended, settings.minimumHorses);
  const late = countOf(ended, "late");
  const early = countOf(ended, "early");
  return {
    kind: "answer",
    id,
    question,
    sentence: `${kept.cases} of ${counted(kept.n, "interval")} kept to the plan: ${howSure({ ...kept, ...kept.logitT })}. ${late} ran over it by more than ${settings.toleranceDays} days and ${early} came that much early.`,
    tables: [],
    charts: [
      intervalKeepingChart(yards, {
        toleranceDays: settings.toleranceDays,
        tooFewReason: `fewer than ${settings.minimumHorses} horses`,
      }),
    ],
    cautions: [
      "Figures describe the diary. They are no advice to change an interval: farrier and owner agree that for each horse.",
    ],
    method: {
      unit: "an interval between two routine visits",
      n: ended.length,
      missing: other("no_plan"),
      text: `Calendar days against the plan, ${settings.toleranceDays} days either way. A lost shoe or a lame call does not restart the clock. Left out: ${counted(other("open"), "interval")} still open, ${counted(other("lost"), "gap")} of more than ${settings.lostAfterDays} days, ${counted(other("no_plan"), "interval")} without a plan. Limits: ${kept.note ?? "logit limits with Student's t, horses as clusters."}`,
      links: ["trimIntervals", "clusteredProportion"],
    },
  };
}

function countOf(rows: readonly TrimInterval[], status: TrimInterval["status"]): number {
  return rows.filter((row) => row.status === status).length;
}

function yardRows(ended: readonly TrimInterval[], minimumHorses: number): IntervalKeepingRow[] {
  const rows = [...grouped(ended, (row) => row.yardId ?? "yard not known")].map(([yardId, of]) => ({
    yardId,
    early: countOf(of, "early"),
    kept: countOf(of, "kept"),
    late: countOf(of, "late"),
    tooFew: new Set(of.map((row) => row.horseId)).size < minimumHorses,
  }));
  return rows.sort((a, b) => (a.yardId < b.yardId ? -1 : 1));
}
