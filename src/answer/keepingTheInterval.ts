import { intervalKeepingChart } from "../chart/intervalKeepingChart.js";
import type { Table } from "../chart/Table.js";
import { daysWithinInterval } from "../derive/daysWithinInterval.js";
import type { TrimInterval } from "../derive/TrimInterval.js";
import { trimIntervals } from "../derive/trimIntervals.js";
import { clusteredProportion } from "../estimate/clusteredProportion.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { endsTable } from "./intervals/endsTable.js";
import { lateAgainTable } from "./intervals/lateAgainTable.js";
import { repeatTable } from "./intervals/repeatTable.js";
import { keepingByYard } from "./intervals/keepingByYard.js";
import { counted } from "./words/counted.js";
import { howSure } from "./words/howSure.js";
import { tooFewHorses } from "./words/tooFewHorses.js";
import { daysInWords } from "./words/daysInWords.js";

const { id, question } = asked("keeping-the-interval");
const mostHorses = 10;

/** How the agreed intervals were kept, on what share of their days horses stood within them, and who ran late again. Unit: an interval, and a horse-day. */
export function keepingTheInterval(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses, toleranceDays, lostAfterDays } = study.settings;
  const intervals = trimIntervals(study);
  const ended = intervals.filter(({ daysLate }) => daysLate !== null);
  const horses = grouped(ended, ({ horseId }) => horseId);
  if (horses.size < minimumHorses) {
    const have = "two routine visits with an agreed interval between them";
    return { kind: "not_enough_data", id, question, reason: tooFewHorses(horses.size, minimumHorses, have, "give no share") };
  }
  const count = (status: TrimInterval["status"]) => ended.filter((row) => row.status === status).length;
  const kept = clusteredProportion(
    [...horses.values()].map((rows) => ({ cases: rows.filter(({ status }) => status === "kept").length, n: rows.length })),
    { level },
  );
  const days = daysWithinInterval(intervals);
  const within = clusteredProportion(
    [...grouped(days, ({ horseId }) => horseId).values()].map((rows) => ({
      cases: rows.reduce((sum, row) => sum + row.within, 0),
      n: rows.reduce((sum, row) => sum + row.days, 0),
    })),
    { level },
  );
  const repeat = repeatTable(intervals, toleranceDays);
  const yards = keepingByYard(intervals, days, study.settings);
  const noPlan = intervals.filter(({ plannedDays, status }) => plannedDays === null && status !== "lost").length;
  return {
    kind: "answer",
    id,
    question,
    sentence: `Of ${counted(ended.length, "interval")} that ended, ${kept.cases} were kept within ${daysInWords(toleranceDays)} of the date: ${howSure({ ...kept, ...kept.logitT })}; ${count("late")} ran late and ${count("early")} came early. Horses stood within their agreed interval on ${howSure({ ...within, ...within.logitT })} of their days, and ${counted(repeat.rows.length, "horse")} ran late more than once.`,
    tables: [
      yards.table,
      ...(repeat.rows.length === 0 ? [] : [worst(repeat)]),
      ...lateAgainTable(intervals, level),
      endsTable(intervals, study),
    ],
    charts: [intervalKeepingChart(yards.rows, { toleranceDays, tooFewReason: `fewer than ${minimumHorses} horses` })],
    cautions: [
      "Figures describe the diary. They are no advice to change an interval: farrier and owner agree that for each horse.",
      "Yards differ in their horses and in who can come when; a share of few horses says little, and none of it says why.",
    ],
    method: {
      unit: "an interval between two routine visits, and a day of a horse",
      n: ended.length,
      missing: noPlan,
      text: `Calendar days against the agreed interval, ${daysInWords(toleranceDays)} either way; a gap of more than ${daysInWords(lostAfterDays)} is loss of contact, not lateness. A lost shoe, a lame call or a follow-up does not restart the clock. Days within the interval: as many after each routine visit as were agreed, no tolerance, nothing carried forward from a visit that came early; ${counted(within.n, "horse-day")}. Limits: logit limits with Student's t, horses as clusters. Missing: intervals without a plan.`,
      links: ["trimIntervals", "daysWithinInterval", "clusteredProportion"],
    },
  };
}

function worst({ rows, caption, ...table }: Table): Table {
  if (rows.length <= mostHorses) return { ...table, caption, rows };
  return {
    ...table,
    caption: `${caption}: the ${mostHorses} that did most often, of ${rows.length}`,
    rows: rows.slice(0, mostHorses),
  };
}
