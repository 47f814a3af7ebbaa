import { dueDates } from "../derive/dueDates.js";
import { horseVisits } from "../derive/horseVisits.js";
import { trimIntervals } from "../derive/trimIntervals.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { counted } from "./words/counted.js";
import { dueStateInWords } from "./words/dueStateInWords.js";
import { listed } from "./words/listed.js";
import { longDate } from "./words/longDate.js";
import { visitReasonInWords } from "./words/visitReasonInWords.js";

const id = "horse-diary";
const question = "How were the visits kept, and when is the next?";

/** Intervals kept, visits out of turn and the next date of one horse, of a study cut to that horse. Unit: an interval. */
export function horseDiary(study: Study): Answer | NotEnoughData {
  const visits = horseVisits(study);
  if (visits.length === 0)
    return { kind: "not_enough_data", id, question, reason: "No foot of this horse has been recorded yet." };
  const intervals = trimIntervals(study);
  const count = (status: string) => intervals.filter((row) => row.status === status).length;
  const [kept, early, late] = [count("kept"), count("early"), count("late")];
  const ended = kept + early + late;
  const others = visits.flatMap(({ reasons }) => (reasons.includes("routine") ? [] : reasons));
  const named = [...new Set(others)].map(
    (reason) => `${visitReasonInWords(reason)} ${others.filter((each) => each === reason).length}`,
  );
  const { toleranceDays } = study.settings;
  return {
    kind: "answer",
    id,
    question,
    sentence: [
      ended === 0
        ? "No interval between two routine visits can be set against a plan."
        : `Of ${counted(ended, "interval")} between routine visits ${kept} kept to the plan within ${toleranceDays} days, ${early} came earlier and ${late} later.`,
      ...(named.length === 0 ? [] : [`Other visits: ${listed(named)}.`]),
      nextOf(study),
    ].join(" "),
    tables: [],
    charts: [],
    cautions: [],
    method: {
      unit: "an interval between two routine visits",
      n: ended,
      missing: count("no_plan"),
      text: "Calendar days against the agreed interval; a visit out of turn does not restart the clock.",
      links: ["trimIntervals", "dueDates"],
    },
  };
}

function nextOf(study: Study): string {
  const row = dueDates(study)[0];
  if (row === undefined) return "The horse has left.";
  if (row.dueOn === null || row.lastRoutine === null || row.state === "lost")
    return `Next date: none, ${dueStateInWords(row.state)}.`;
  const past = (row.daysLeft ?? 0) < 0 ? `, ${counted(-(row.daysLeft ?? 0), "day")} ago` : "";
  return `Last routine visit ${longDate(row.lastRoutine)}, ${counted(row.plannedDays ?? 0, "day")} agreed: next due ${longDate(row.dueOn)}${past}.`;
}
