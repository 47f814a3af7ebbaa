import { dateOfDay } from "../../study/dateOfDay.js";
import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import type { DistrictHorse } from "./DistrictHorse.js";
import type { DistrictRow } from "./DistrictRow.js";
import type { DistrictWorld } from "./DistrictWorld.js";
import { districtYards } from "./districtYards.js";
import type { FootState } from "./FootState.js";
import { observerOn } from "./observerOn.js";
import { thrushLogOdds } from "./thrushLogOdds.js";
import { thrushLook } from "./thrushLook.js";
import type { VisitCells } from "./VisitCells.js";

/** The time between two routine visits to a horse. */
export interface Between {
  readonly horse: DistrictHorse;
  readonly feet: readonly FootState[];
  readonly yardId: string;
  readonly from: number;
  /** Day number of the next routine visit, or the first day on which nothing can happen any more. */
  readonly to: number;
  readonly trimDay: number;
}

/** Visits that nobody planned, one foot each, and abscesses that broke out. */
export interface UnplannedVisits {
  readonly rows: readonly DistrictRow[];
  readonly bursts: readonly { readonly foot: FootState["foot"]; readonly burstOn: string }[];
}

/**
 * Lost shoes, lame feet and follow-ups between two routine visits. Shoes come off more often after rain. Most lame feet hold an abscess; most
 * of those break out at the coronet some days later, which sets the day of the foot.
 */
export function unplannedVisits(between: Between, world: DistrictWorld, random: RandomSource): UnplannedVisits {
  if (between.to - between.from < 15) return { rows: [], bursts: [] };
  const lame = random.bernoulli(0.025) ? lameVisit(between, world, random.stream("lame")) : { rows: [], bursts: [] };
  const taken = new Set(lame.rows.map(({ visitDate }) => visitDate));
  const shoe = lostShoe(between, world, random.stream("shoe")).filter(({ visitDate }) => !taken.has(visitDate));
  return { rows: [...lame.rows, ...shoe], bursts: lame.bursts };
}

function lostShoe(between: Between, world: DistrictWorld, random: RandomSource): DistrictRow[] {
  const shod = between.feet.filter((foot) => foot.shod);
  if (shod.length === 0) return [];
  const foot = random.pick(shod);
  const day = random.integer(between.from + 5, between.to - 5);
  const gaugeId = districtYards.find(({ yardId }) => yardId === between.yardId)?.gaugeId ?? "";
  const { rainMm14d } = world.wetness(gaugeId, dateOfDay(day));
  if (!random.bernoulli(Math.min(0.5, 0.07 + 0.0015 * rainMm14d))) return [];
  const graded = random.bernoulli(0.6) ? look(foot, between, day, world, random) : {};
  return [
    row(between, foot, day, world, {
      reason: "lost_shoe",
      ...graded,
      shoe_state: "lost",
      work_done: random.bernoulli(0.7) ? "reset" : "shoe",
    }),
  ];
}

function lameVisit(between: Between, world: DistrictWorld, random: RandomSource): UnplannedVisits {
  const foot = random.pick(between.feet);
  const day = random.integer(between.from + 3, between.to - 3);
  const abscess = random.bernoulli(0.65);
  const vet = random.bernoulli(0.7) ? "yes" : "no";
  const found: VisitCells = { reason: "lame", ...look(foot, between, day, world, random), abscess: abscess ? "yes" : "no" };
  const rows = [
    row(between, foot, day, world, { ...found, shoe_state: foot.shod ? "tight" : "bare", work_done: "none", vet_involved: vet }),
  ];
  const again = day + random.integer(7, 10);
  if (again < between.to) {
    const bandaged = random.bernoulli(0.3);
    const seen: VisitCells = bandaged
      ? { examined: "no", not_examined_reason: "bandaged by the vet", work_done: "none" }
      : { ...look(foot, between, again, world, random), abscess: "no", work_done: "none" };
    rows.push(row(between, foot, again, world, { reason: "follow_up", ...seen, vet_involved: vet }));
  }
  const burstDay = day + random.integer(3, 9);
  if (!abscess || !random.bernoulli(0.8)) return { rows, bursts: [] };
  foot.burstDay = burstDay;
  return { rows, bursts: [{ foot: foot.foot, burstOn: dateOfDay(burstDay) }] };
}

function look(foot: FootState, between: Between, day: number, world: DistrictWorld, random: RandomSource): VisitCells {
  const date = dateOfDay(day);
  const { yardId, horse } = between;
  const where = { yardId, date, hind: foot.hind, treated: false, horseEffect: horse.effect, footEffect: foot.effect };
  const eye = observerOn(yardId, date, world.yardDays) === "M" ? world.effects.secondObserver : 0;
  const { grade, cells } = thrushLook(thrushLogOdds(where, world), eye, world.effects.gradeSteps, random.stream(`look ${day}`));
  foot.lastGrade = grade;
  return { examined: "yes", ...cells };
}

function row(
  { horse, yardId }: Between,
  { foot }: FootState,
  day: number,
  { yardDays }: DistrictWorld,
  cells: VisitCells,
): DistrictRow {
  const date = dateOfDay(day);
  const observer_id = observerOn(yardId, date, yardDays);
  return {
    visitDate: date,
    yardId,
    horseId: horse.horseId,
    cells: { visit_date: date, horse_id: horse.horseId, foot, stage: "single", observer_id, ...cells },
  };
}
