import { dayNumber } from "../../study/dayNumber.js";
import { districtCalendar } from "./districtCalendar.js";
import type { DistrictWorld } from "./DistrictWorld.js";
import { districtYards } from "./districtYards.js";
import { seasonWave } from "./seasonWave.js";

/** What decides whether a foot has thrush on a day. */
export interface ThrushSituation {
  readonly yardId: string;
  readonly date: string;
  readonly hind: boolean;
  readonly treated: boolean;
  readonly horseEffect: number;
  readonly footEffect: number;
}

/**
 * Log odds that a foot has thrush of grade 1 or more, the observer not counted: the planted sum of wetness, season, end, dressing,
 * bedding, yard, horse and foot.
 */
export function thrushLogOdds(situation: ThrushSituation, { effects, wetness, yardEffects }: DistrictWorld): number {
  const { yardId, date } = situation;
  const yard = districtYards.find((candidate) => candidate.yardId === yardId);
  if (yard === undefined) throw new RangeError(`No yard ${yardId} in the district`);
  const { rainMm14d, dewNights14d } = wetness(yard.gaugeId, date);
  const newBedding = yardId === districtCalendar.bedding.yardId && date >= districtCalendar.bedding.changedOn;
  return (
    effects.intercept +
    effects.rainPer10Mm14d * (rainMm14d / 10) +
    effects.perDewNight14d * dewNights14d +
    effects.seasonAmplitude * seasonWave(dayNumber(date)!) +
    (situation.hind ? effects.hind : 0) +
    (situation.treated ? effects.surfaceTreated : 0) +
    (newBedding ? effects.beddingChange : 0) +
    (yardEffects.get(yardId) ?? 0) +
    situation.horseEffect +
    situation.footEffect
  );
}
