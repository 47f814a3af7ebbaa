import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";
import type { HorseStay } from "../study/HorseStay.js";
import type { Study } from "../study/Study.js";
import { asOfDate } from "./asOfDate.js";
import type { DueDate, DueState } from "./DueDate.js";
import { footSide } from "./footSide.js";
import { horsesGone } from "./horsesGone.js";
import { presenceEnd } from "./presenceEnd.js";
import { stayAt } from "./stayAt.js";
import type { TrimInterval } from "./TrimInterval.js";
import { trimIntervals } from "./trimIntervals.js";

/**
 * When each horse is next due, as of the day of the review (`asOfDate`); by date, horses without one last, then by horse.
 *
 * Method: the date is that of the interval that is open on that day (`trimIntervals`): last routine visit plus the days agreed. A lost shoe or
 * a lame call does not move it. Horses that have left by that day, or come later, have no row; a horse that went away and came
 * back starts anew. A horse without a stay in the records is taken as still there. Detached feet are left out.
 *
 * Missing: without a visit or a plan there is no date, and the state says so; nothing is filled in.
 *
 * Source: common practice, no source.
 */
export function dueDates(study: Pick<Study, "visits" | "horses" | "settings">): DueDate[] {
  const asOf = asOfDate(study);
  if (asOf === null) return [];
  const visits = study.visits.filter(({ foot, visitDate }) => footSide(foot) !== null && visitDate <= asOf);
  const open = new Map(trimIntervals({ ...study, visits }).map((row) => [row.horseId, row]));
  const stays = grouped(study.horses, (stay) => stay.horseId);
  const gone = horsesGone(study);
  const seen = lastSeen(visits);
  const detached = new Set(study.visits.filter(({ foot }) => footSide(foot) === null).map(({ horseId }) => horseId));
  const named = [...new Set([...stays.keys(), ...seen.keys()])].filter((horseId) => seen.has(horseId) || !detached.has(horseId));
  const rows = named.flatMap((horseId): DueDate[] => {
    if (gone.has(horseId)) return [];
    const own = stays.get(horseId) ?? [];
    const stay = stayAt(own, horseId, asOf);
    const last = open.get(horseId);
    const clock = last?.censoredBy === "as_of" ? last : null;
    return [
      {
        horseId,
        yardId: stay?.yardId ?? null,
        state: stateOf(clock, study.settings.toleranceDays),
        lastRoutine: clock?.from ?? null,
        lastSeen: seenInThisTime(own, seen.get(horseId) ?? null, asOf),
        plannedDays: clock?.plannedDays ?? null,
        dueOn: clock?.dueOn ?? null,
        daysLeft: daysLeft(clock),
      },
    ];
  });
  return rows.sort((a, b) => compare(a.dueOn ?? "9999", b.dueOn ?? "9999") || compare(a.horseId, b.horseId));
}

function lastSeen(visits: readonly FootVisit[]): Map<string, string> {
  const last = new Map<string, string>();
  for (const { horseId, visitDate } of visits) if (visitDate > (last.get(horseId) ?? "")) last.set(horseId, visitDate);
  return last;
}

/** A visit of an earlier time, before the horse went away, says nothing about now. */
function seenInThisTime(stays: readonly HorseStay[], date: string | null, asOf: string): string | null {
  if (date === null) return null;
  const end = presenceEnd(stays, date);
  return end !== null && end < asOf ? null : date;
}

function daysLeft(clock: TrimInterval | null): number | null {
  const planned = clock?.plannedDays ?? null;
  return clock === null || planned === null ? null : planned - clock.gapDays;
}

function stateOf(clock: TrimInterval | null, toleranceDays: number): DueState {
  if (clock === null) return "not_started";
  if (clock.status === "lost") return "lost";
  const left = daysLeft(clock);
  if (left === null) return "no_plan";
  if (left >= 0) return "to_come";
  return -left > toleranceDays ? "over" : "past";
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
