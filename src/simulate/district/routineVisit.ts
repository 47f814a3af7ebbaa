import { dateOfDay } from "../../study/dateOfDay.js";
import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import { districtCalendar } from "./districtCalendar.js";
import type { DistrictHorse } from "./DistrictHorse.js";
import type { DistrictRow } from "./DistrictRow.js";
import type { DistrictWorld } from "./DistrictWorld.js";
import type { FootState } from "./FootState.js";
import { grownFoot } from "./grownFoot.js";
import { measuredCells } from "./measuredCells.js";
import { observerOn } from "./observerOn.js";
import { thrushLogOdds } from "./thrushLogOdds.js";
import { type ThrushLook, thrushLook } from "./thrushLook.js";
import type { TracedFoot } from "./TracedFoot.js";
import type { VisitCells } from "./VisitCells.js";
import { visitNote } from "./visitNote.js";
import { wallCells } from "./wallCells.js";

/** One horse on the day of a routine visit. */
export interface RoutineSituation {
  readonly horse: DistrictHorse;
  readonly feet: readonly FootState[];
  readonly yardId: string;
  readonly day: number;
  /** Day number of the last trim. */
  readonly trimDay: number;
  /** First visit of a horse that joined. */
  readonly isFirst: boolean;
}

/** Rows of a routine visit and what follows from it. */
export interface RoutineVisit {
  readonly rows: readonly DistrictRow[];
  /** Days to the next visit, as agreed; short when the horse was not caught. */
  readonly agreedDays: number;
  readonly trimmed: boolean;
  /** The feet that were measured, as they are. */
  readonly traced: readonly TracedFoot[];
}

interface Look {
  readonly foot: FootState;
  readonly treated: boolean;
  /** Why the foot was not looked at; null when it was. */
  readonly unseen: string | null;
  readonly thrush: ThrushLook;
}

/** A routine visit: every foot looked at where that was possible, some measured before and some of those after the trim. */
export function routineVisit(situation: RoutineSituation, world: DistrictWorld, random: RandomSource): RoutineVisit {
  const { horse, feet, yardId, day, isFirst } = situation;
  const date = dateOfDay(day);
  const caught = isFirst || !random.bernoulli(0.012);
  const observerId = observerOn(yardId, date, world.yardDays);
  const looks = feet.map((foot) => lookAt(foot, situation, caught, observerId, world, random.stream(foot.foot)));
  const worst = Math.max(0, ...looks.filter((look) => look.unseen === null).map((look) => look.thrush.grade));
  const usual = horse.plannedIntervalDays ?? 49;
  const shorter = worst >= 2 ? Math.max(28, usual - world.effects.shorterAfterGrade2Days) : usual;
  const agreedDays = caught ? shorter : random.integer(7, 12);
  const said = horse.plannedIntervalDays !== null && caught && (agreedDays !== usual || random.bernoulli(0.4));
  const shared: VisitCells = {
    visit_date: date,
    horse_id: horse.horseId,
    ...(random.bernoulli(0.03) && !isFirst && caught ? {} : { reason: !caught ? "other" : isFirst ? "new_horse" : "routine" }),
    observer_id: observerId,
    ...(said ? { next_interval_days: agreedDays } : {}),
  };
  const style = { measured: random.bernoulli(0.55), bothStages: observerId === "K" && random.bernoulli(0.5) };
  const written = looks.map((look) => footRows(look, situation, shared, style, random.stream(`write ${look.foot.foot}`)));
  const rows = written.flatMap((foot) => foot.rows);
  const traced = written.flatMap((foot) => foot.traced ?? []);
  const second = caught ? secondOpinions(looks, traced, situation, observerId, world, random.stream("second")) : [];
  return {
    rows: [...rows, ...second].map((cells) => ({ visitDate: date, yardId, horseId: horse.horseId, cells })),
    agreedDays,
    trimmed: caught,
    traced,
  };
}

function lookAt(
  foot: FootState,
  { horse, yardId, day }: RoutineSituation,
  caught: boolean,
  observerId: string,
  world: DistrictWorld,
  random: RandomSource,
): Look {
  const treated = random.bernoulli(0.07 + ((foot.lastGrade ?? 0) >= 1 ? 0.3 : 0));
  const where = { yardId, date: dateOfDay(day), hind: foot.hind, treated, horseEffect: horse.effect, footEffect: foot.effect };
  const eye = observerId === "M" ? world.effects.secondObserver : 0;
  const thrush = thrushLook(thrushLogOdds(where, world), eye, world.effects.gradeSteps, random);
  const awkward = foot.hind && horse.awkwardHinds && random.bernoulli(0.4);
  const dark = random.bernoulli(0.008);
  const unseen = !caught ? "would not be caught" : awkward ? "would not give its hind feet" : dark ? "ran out of light" : null;
  if (unseen === null) foot.lastGrade = thrush.grade;
  return { foot, treated, unseen, thrush };
}

function footRows(
  { foot, treated, unseen, thrush }: Look,
  { horse, day, trimDay }: RoutineSituation,
  shared: VisitCells,
  style: { readonly measured: boolean; readonly bothStages: boolean },
  random: RandomSource,
): { readonly rows: VisitCells[]; readonly traced: TracedFoot | null } {
  const common: VisitCells = { ...shared, foot: foot.foot };
  if (unseen !== null) {
    return { rows: [{ ...common, examined: "no", not_examined_reason: unseen, work_done: "none" }], traced: null };
  }
  const gap = day - trimDay;
  const grown = grownFoot(foot, horse.growthMmPerDay, gap, random);
  const stage = random.bernoulli(0.02) ? "" : shared.observer_id === "K" ? "before_trim" : "single";
  const before: VisitCells = {
    ...common,
    ...(stage === "" ? {} : { stage }),
    examined: "yes",
    ...thrush.cells,
    ...(style.measured ? measuredCells(grown.measures, random) : {}),
    ...(grown.flares.length === 0 ? {} : { flare_site: grown.flares.join(";") }),
    ...wallCells(foot, day, gap, horse.growthMmPerDay, random),
    ...(style.measured ? { abscess: "no" } : {}),
    ...(random.bernoulli(0.9) ? { horn_colour: foot.hornColour } : {}),
    shoe_state: shoeState(foot, gap, random),
    work_done: !foot.shod ? "trim" : random.bernoulli(0.35) ? "reset" : "shoe",
    ...(random.bernoulli(0.85) ? { surface_treated_7d: treated ? "yes" : "no" } : {}),
    ...(thrush.grade === 3 ? { vet_involved: random.bernoulli(0.5) ? "yes" : "no" } : {}),
    ...visitNote(random),
  };
  // Some toe is left on at each trim of a foot that tends to flare.
  if (foot.flareTendency > 0.7) foot.creepMm += 0.4;
  const traced = style.measured ? { foot: foot.foot, hind: foot.hind, stage, ...grown } : null;
  if (stage !== "before_trim" || !style.measured || !style.bothStages) return { rows: [before], traced };
  return { rows: [before, afterTrim(foot, common, before, random)], traced };
}

function afterTrim(foot: FootState, common: VisitCells, before: VisitCells, random: RandomSource): VisitCells {
  const { toeLengthMm } = foot.trimmed;
  const measures = measuredCells({ ...foot.trimmed, toeLengthMm: toeLengthMm + foot.creepMm }, random);
  const after = { ...common, stage: "after_trim", examined: "yes", ...measures };
  const [was, is] = [before.toe_length_mm, measures.toe_length_mm];
  return was === undefined || is === undefined ? after : { ...after, toe_length_mm: Math.min(Number(was), Number(is)) };
}

function shoeState(foot: FootState, gap: number, random: RandomSource): string {
  if (!foot.shod) return "bare";
  const state = random.uniform();
  if (state < 0.03) return "lost";
  if (state < 0.1) return "sprung";
  return state < 0.1 + 0.004 * gap ? "worn" : "tight";
}

/**
 * On the days of double scoring both observers grade the frogs of a horse, and measure its feet where the first did, each without the
 * other's figures. The second row of a foot and day goes under another stage, since a foot has one row for each stage.
 */
function secondOpinions(
  looks: readonly Look[],
  traced: readonly TracedFoot[],
  { horse, yardId, day }: RoutineSituation,
  observerId: string,
  { effects }: DistrictWorld,
  random: RandomSource,
): VisitCells[] {
  const date = dateOfDay(day);
  const session = districtCalendar.doubleScoring.find(({ yardId: at, from, to }) => at === yardId && date >= from && date <= to);
  if (session === undefined) return [];
  const other = observerId === "K" ? { id: "M", effect: effects.secondObserver } : { id: "K", effect: 0 };
  return looks
    .filter(({ unseen }) => unseen === null)
    .map(({ foot, thrush }) => {
      const measured = traced.find((of) => of.foot === foot.foot);
      return {
        visit_date: date,
        horse_id: horse.horseId,
        foot: foot.foot,
        stage: observerId === "K" ? "single" : "before_trim",
        reason: "routine",
        observer_id: other.id,
        examined: "yes",
        thrush_grade: thrush.gradeBy(other.effect),
        ...(measured === undefined ? {} : measuredCells(measured.measures, random.stream(foot.foot))),
        note: "second observer",
      };
    });
}
