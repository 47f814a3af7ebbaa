import { dateOfDay } from "../../study/dateOfDay.js";
import { dayNumber } from "../../study/dayNumber.js";
import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import { districtCalendar } from "./districtCalendar.js";
import { districtFeet } from "./districtFeet.js";
import type { DistrictHorse } from "./DistrictHorse.js";
import type { DistrictRow } from "./DistrictRow.js";
import type { DistrictWorld } from "./DistrictWorld.js";
import { districtYards } from "./districtYards.js";
import { farrierDay } from "./farrierDay.js";
import type { FootState } from "./FootState.js";
import { observerOn } from "./observerOn.js";
import { rounded } from "./rounded.js";
import { routineVisit } from "./routineVisit.js";
import type { TracedVisit } from "./TracedFoot.js";
import { unplannedVisits } from "./unplannedVisits.js";

/** What became of one horse: its feet at the end and every row of its visits. */
export interface HorseHistory {
  readonly horse: DistrictHorse;
  readonly feet: readonly FootState[];
  readonly rows: readonly DistrictRow[];
  /** Days on which pus broke out at the coronet. */
  readonly bursts: readonly { readonly foot: FootState["foot"]; readonly burstOn: string }[];
  /** Visits at which feet were measured, and the feet as they were. */
  readonly traced: readonly TracedVisit[];
}

/**
 * All visits to one horse, from routine visit to routine visit: how the feet are found, what is agreed, when the next visit really
 * takes place, and what happens in between.
 */
export function horseHistory(horse: DistrictHorse, world: DistrictWorld, random: RandomSource): HorseHistory {
  const feet = districtFeet(horse, random.stream("feet"), world.effects.footSd);
  const lastDay = Math.min(dayNumber(districtCalendar.lastDay)!, horse.leftOn === null ? Infinity : dayNumber(horse.leftOn)!);
  const planned = horse.plannedIntervalDays ?? 49;
  const rows: DistrictRow[] = [];
  const bursts: HorseHistory["bursts"][number][] = [];
  const traced: TracedVisit[] = [];
  let day = firstDay(horse, planned, random.stream("first"));
  let trimDay = day - planned;
  for (let visit = 0; day <= lastDay; visit++) {
    const chance = random.stream(`visit ${visit}`);
    const yardId = yardOn(horse, day);
    const found = routineVisit(
      { horse, feet, yardId, day, trimDay, isFirst: visit === 0 && horse.joinedOn !== null },
      world,
      chance,
    );
    rows.push(...found.rows);
    if (found.traced.length > 0) {
      const visitDate = dateOfDay(day);
      traced.push({ visitDate, observerId: observerOn(yardId, visitDate, world.yardDays), feet: found.traced });
    }
    if (horse.lost) break;
    if (found.trimmed) trimDay = day;
    const next = farrierDay(yardOn(horse, day), nextWanted(horse, yardId, day, found.agreedDays, world, chance), day + 7);
    const between = { horse, feet, yardId, from: day, to: Math.min(next, lastDay + 1), trimDay };
    const unplanned = unplannedVisits(between, world, chance.stream("unplanned"));
    rows.push(...unplanned.rows);
    bursts.push(...unplanned.bursts);
    day = next;
  }
  return { horse, feet, rows, bursts, traced };
}

function firstDay(horse: DistrictHorse, planned: number, random: RandomSource): number {
  const start = dayNumber(districtCalendar.firstVisit)!;
  if (horse.joinedOn === null) return farrierDay(horse.yardId, start + (horse.lost ? 0 : random.integer(0, planned - 1)), start);
  const joined = dayNumber(horse.joinedOn)!;
  return farrierDay(horse.yardId, joined + random.integer(2, 12), joined + 1);
}

function yardOn(horse: DistrictHorse, day: number): string {
  const moved = horse.moves && dateOfDay(day) >= districtCalendar.move.joinedOn;
  return moved ? districtCalendar.move.toYardId : horse.yardId;
}

/** The agreed day, plus what the yard and the horse run over; now and then a visit is brought forward or forgotten. */
function nextWanted(
  horse: DistrictHorse,
  yardId: string,
  day: number,
  agreedDays: number,
  { effects }: DistrictWorld,
  random: RandomSource,
): number {
  const late = districtYards.find((yard) => yard.yardId === yardId)?.late ?? false;
  const usual = random.normal((late ? effects.lateYardDelayDays : effects.delayDays) + horse.slipDays, 3.5);
  const kind = random.uniform();
  const odd = kind < 0.06 ? -random.integer(9, 16) : kind > 0.975 ? random.integer(18, 32) : 0;
  return day + agreedDays + rounded(usual) + odd;
}
