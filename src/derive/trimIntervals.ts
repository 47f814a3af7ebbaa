import { dateOfDay } from "../study/dateOfDay.js";
import { dayNumber } from "../study/dayNumber.js";
import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";
import type { HorseStay } from "../study/HorseStay.js";
import type { Settings } from "../study/Settings.js";
import type { Study } from "../study/Study.js";
import { asOfDate } from "./asOfDate.js";
import { presenceEnd } from "./presenceEnd.js";
import { requiredDay } from "./requiredDay.js";
import { stayAt } from "./stayAt.js";
import type { TrimInterval, TrimIntervalStatus } from "./TrimInterval.js";

/**
 * Gaps between routine visits, one row for each gap of each horse, by day and horse. The last gap of a horse has no end and is censored.
 *
 * Method: calendar days. Only routine visits and the first visit of a new horse start the clock, and only routine visits stop it; a
 * lost shoe, lameness, a follow-up or another visit in between is counted in the row and does not reset it. A visit without a
 * reason counts as routine and is counted too; several rows of one day are one visit, routine if any of them is. The plan is the
 * `next_interval_days` of the visit that began the gap (the shortest, if its rows differ), else the planned interval of the horse's
 * stay. A gap within `toleranceDays` of its plan on either side is kept. It is cut on the day of the review (`asOfDate`; later visits are left out),
 * on the day the horse leaves without joining another yard the day after, or when the horse starts anew as a new horse.
 *
 * Missing: without a plan the status is `no_plan` and there are no days late. A gap longer than `lostAfterDays`, ended or not, is lost.
 *
 * Source: common practice, no source.
 */
export function trimIntervals(study: Pick<Study, "visits" | "horses" | "settings">): TrimInterval[] {
  const asOf = asOfDate(study);
  if (asOf === null) return [];
  const stays = grouped(study.horses, (stay) => stay.horseId);
  const rows = [...grouped(study.visits, (visit) => visit.horseId)].flatMap(([horseId, visits]) =>
    gapsOfHorse(visits, stays.get(horseId) ?? [], study.settings, requiredDay(asOf)),
  );
  return rows.sort((a, b) => (a.from === b.from ? (a.horseId < b.horseId ? -1 : 1) : a.from < b.from ? -1 : 1));
}

interface VisitDay {
  readonly date: string;
  readonly day: number;
  readonly kind: "routine" | "new_horse" | "unscheduled";
  readonly assumed: boolean;
  readonly nextIntervalDays: number | null;
}

function visitDays(visits: readonly FootVisit[], asOfDay: number): VisitDay[] {
  const days = [...grouped(visits, (visit) => visit.visitDate)].map(([date, rows]): VisitDay => {
    const reasons = rows.map((row) => row.reason);
    const said = reasons.includes("routine") ? "routine" : reasons.includes("new_horse") ? "new_horse" : null;
    const assumed = said === null && reasons.includes(null);
    const agreed = rows.flatMap((row) => (row.nextIntervalDays === null ? [] : [row.nextIntervalDays]));
    return {
      date,
      day: dayNumber(date)!,
      kind: said ?? (assumed ? "routine" : "unscheduled"),
      assumed,
      nextIntervalDays: agreed.length === 0 ? null : Math.min(...agreed),
    };
  });
  return days.filter(({ day }) => day <= asOfDay).sort((a, b) => a.day - b.day);
}

function gapsOfHorse(
  visits: readonly FootVisit[],
  stays: readonly HorseStay[],
  settings: Settings,
  asOfDay: number,
): TrimInterval[] {
  const days = visitDays(visits, asOfDay);
  const clock = days.filter(({ kind }) => kind !== "unscheduled");
  return clock.map((from, place) => {
    const stay = stayAt(stays, visits[0]!.horseId, from.date);
    const end = endOf(from, clock[place + 1], presenceEnd(stays, from.date), asOfDay);
    const gapDays = end.day - from.day;
    const plannedDays = from.nextIntervalDays ?? stay?.plannedIntervalDays ?? null;
    const status = statusOf(gapDays, plannedDays, end.visit !== null, settings);
    const ended = status === "kept" || status === "early" || status === "late";
    return {
      horseId: visits[0]!.horseId,
      yardId: stay?.yardId ?? null,
      from: from.date,
      to: end.visit?.date ?? null,
      gapDays,
      plannedDays,
      plannedBy: plannedDays === null ? null : from.nextIntervalDays === null ? "horse" : "visit",
      dueOn: plannedDays === null ? null : dateOfDay(from.day + plannedDays),
      daysLate: ended && plannedDays !== null ? gapDays - plannedDays : null,
      ratio: ended && plannedDays !== null ? gapDays / plannedDays : null,
      status,
      censoredBy: end.censoredBy,
      overdueDays: end.censoredBy === "as_of" && plannedDays !== null ? Math.max(0, gapDays - plannedDays) : null,
      unscheduledVisits: days.filter(({ kind, day }) => kind === "unscheduled" && day > from.day && day <= end.day).length,
      assumedRoutine: [from, end.visit].filter((visit) => visit?.assumed).length,
    };
  });
}

interface GapEnd {
  readonly day: number;
  readonly visit: VisitDay | null;
  readonly censoredBy: TrimInterval["censoredBy"];
}

function endOf(from: VisitDay, next: VisitDay | undefined, leftOn: string | null, asOfDay: number): GapEnd {
  const leftDay = leftOn === null ? Infinity : dayNumber(leftOn)!;
  if (next !== undefined && next.day <= leftDay) {
    if (next.kind === "routine") return { day: next.day, visit: next, censoredBy: null };
    return { day: next.day, visit: null, censoredBy: "new_start" };
  }
  if (leftDay <= asOfDay) return { day: Math.max(leftDay, from.day), visit: null, censoredBy: "left" };
  return { day: asOfDay, visit: null, censoredBy: "as_of" };
}

function statusOf(gapDays: number, plannedDays: number | null, ended: boolean, settings: Settings): TrimIntervalStatus {
  if (gapDays > settings.lostAfterDays) return "lost";
  if (!ended) return "open";
  if (plannedDays === null) return "no_plan";
  const late = gapDays - plannedDays;
  if (Math.abs(late) <= settings.toleranceDays) return "kept";
  return late > 0 ? "late" : "early";
}
