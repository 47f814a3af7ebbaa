import { asOfDate } from "../derive/asOfDate.js";
import type { TrimInterval } from "../derive/TrimInterval.js";
import { trimIntervals } from "../derive/trimIntervals.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { counted } from "./words/counted.js";
import { listed } from "./words/listed.js";
import { longDate } from "./words/longDate.js";
import { daysInWords } from "./words/daysInWords.js";

const { id, question } = asked("over-the-date");

/** Horses with late intervals or overdue on the day of the review. Unit: a horse. */
export function overTheDate(study: Study): Answer | NotEnoughData {
  const { settings } = study;
  const asOf = asOfDate(study);
  const intervals = trimIntervals(study);
  const planned = grouped(
    intervals.filter((row) => row.plannedDays !== null),
    (row) => row.horseId,
  );
  if (asOf === null || planned.size === 0) {
    return { kind: "not_enough_data", id, question, reason: "No horse has both a routine visit and an agreed interval." };
  }
  const horses = [...planned].map(([horseId, rows]) => lateness(horseId, rows, settings.toleranceDays));
  const over = horses.filter((row) => row.late > 0 || row.overdueDays !== null);
  const repeat = horses.filter((row) => row.late >= 2);
  const overdue = horses.filter((row) => row.overdueDays !== null).sort((a, b) => (b.overdueDays ?? 0) - (a.overdueDays ?? 0));
  over.sort((a, b) => b.late - a.late || (b.overdueDays ?? 0) - (a.overdueDays ?? 0) || (a.horseId < b.horseId ? -1 : 1));
  const ran = horses.filter((row) => row.late > 0).length;
  const past = `more than ${daysInWords(settings.toleranceDays)} over`;
  const ranWords =
    ran === 0
      ? `No horse of ${planned.size} ran ${past}.`
      : `${counted(ran, "horse")} of ${planned.size} ran ${past} at least once, ${counted(repeat.length, "horse")} more than once.`;
  return {
    kind: "answer",
    id,
    question,
    sentence: `${ranWords} On ${longDate(asOf)} ${overdueWords(overdue)}.`,
    tables: over.length === 0 ? [] : [tableOf(over, asOf, settings.toleranceDays)],
    charts: [],
    cautions: [],
    method: {
      unit: "a horse",
      n: planned.size,
      missing: new Set(study.visits.map((visit) => visit.horseId)).size - planned.size,
      text: `Calendar days against the agreed interval. Late: more than ${daysInWords(settings.toleranceDays)} over. Overdue: no routine visit since, and more than ${daysInWords(settings.toleranceDays)} past the date; horses that left are not. Missing: horses without a routine visit or without an agreed interval.`,
      links: ["trimIntervals"],
    },
  };
}

interface Lateness {
  readonly horseId: string;
  readonly yardId: string | null;
  readonly intervals: number;
  readonly late: number;
  readonly mostDaysLate: number | null;
  /** Days past the date today; null when not over. */
  readonly overdueDays: number | null;
}

function lateness(horseId: string, rows: readonly TrimInterval[], toleranceDays: number): Lateness {
  const ended = rows.filter((row) => row.daysLate !== null);
  const late = ended.filter((row) => row.status === "late");
  const last = rows.at(-1);
  const overdue = last?.status === "open" ? last.overdueDays : null;
  return {
    horseId,
    yardId: last?.yardId ?? null,
    intervals: ended.length,
    late: late.length,
    mostDaysLate: late.length === 0 ? null : Math.max(...late.map((row) => row.daysLate ?? 0)),
    overdueDays: overdue !== null && overdue > toleranceDays ? overdue : null,
  };
}

function overdueWords(overdue: readonly Lateness[]): string {
  if (overdue.length === 0) return "none was overdue";
  const named = overdue.map((row) => `${row.horseId} (${counted(row.overdueDays ?? 0, "day")})`);
  return `${counted(overdue.length, "horse was", "horses were")} overdue: ${listed(named, 5)}`;
}

function tableOf(rows: readonly Lateness[], asOf: string, toleranceDays: number): Answer["tables"][number] {
  return {
    caption: `Horses that ran more than ${daysInWords(toleranceDays)} over, or are overdue on ${longDate(asOf)}`,
    columns: [
      { name: "horseId", title: "Horse" },
      { name: "yardId", title: "Yard" },
      { name: "late", title: "Times late" },
      { name: "intervals", title: "Of intervals" },
      { name: "mostDaysLate", title: "Most days over" },
      { name: "overdueDays", title: "Days overdue now" },
    ],
    rows: rows.map((row) => ({ ...row })),
  };
}
