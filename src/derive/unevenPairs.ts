import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import { byVisit } from "./byVisit.js";
import { footEnd } from "./footEnd.js";
import { footSide } from "./footSide.js";
import { heldToThreshold } from "./heldToThreshold.js";
import type { ShapeFlag } from "./ShapeFlag.js";
import { stayAt } from "./stayAt.js";

/** Left and right foot of one end of a horse, on one day, at one stage. */
export interface UnevenPair {
  readonly horseId: string;
  readonly yardId: string | null;
  readonly visitDate: string;
  readonly end: "fore" | "hind" | null;
  readonly stage: FootVisit["stage"];
  /** Toe angle left minus right, degrees. */
  readonly toeAngleDifferenceDeg: number | null;
  /** The same without its sign. */
  readonly toeAngleGapDeg: number | null;
  /** Hoof width left minus right, mm. */
  readonly widthDifferenceMm: number | null;
  /** Angles further apart than `unevenPairDeg`; null when that cannot be said, or for a species other than horse and pony. */
  readonly uneven: boolean | null;
  /** The threshold that was put to the pair, with its source; null where `uneven` is. */
  readonly flag: ShapeFlag | null;
}

/**
 * How far the two feet of a pair differ: one row for each horse, day, end and stage with at least one foot recorded, by day and horse.
 *
 * Method: left minus right at the same stage of the same day; the flag compares the size of the angle difference with
 * `unevenPairDeg`. Where one foot has several rows at a stage, the first measured one counts. Specimens of unknown side have no pair.
 *
 * Missing: a difference is null when either foot lacks the measure. An unknown stage is a stage of its own.
 *
 * Source: absolute difference in toe angle tells even from uneven pairs best (Wiggers N et al. 2015, PLoS ONE 10:e0114836).
 */
export function unevenPairs(study: Pick<Study, "visits" | "horses" | "settings">): UnevenPair[] {
  const stays = grouped(study.horses, (stay) => stay.horseId);
  const sided = study.visits.filter((visit) => footSide(visit.foot) !== null);
  const pairs = grouped(sided, (visit) => [visit.horseId, visit.visitDate, footEnd(visit.foot), visit.stage].join("\n"));
  const rows = [...pairs.values()].map((pair): UnevenPair => {
    const { horseId, visitDate, foot, stage } = pair[0]!;
    const stay = stayAt(stays.get(horseId) ?? [], horseId, visitDate);
    const species = stay?.species ?? "horse";
    const angle = leftMinusRight(pair, "toeAngleDeg");
    const gap = angle === null ? null : Math.abs(angle);
    const flagged = species === "horse" || species === "pony";
    const flag = gap === null || !flagged ? null : heldToThreshold("uneven", gap, study.settings.unevenPairDeg);
    return {
      horseId,
      yardId: stay?.yardId ?? null,
      visitDate,
      end: footEnd(foot),
      stage,
      toeAngleDifferenceDeg: angle,
      toeAngleGapDeg: gap,
      widthDifferenceMm: leftMinusRight(pair, "hoofWidthMm"),
      uneven: flag?.raised ?? null,
      flag,
    };
  });
  return rows.sort(byVisit);
}

function leftMinusRight(pair: readonly FootVisit[], measure: "toeAngleDeg" | "hoofWidthMm"): number | null {
  const of = (side: "left" | "right") =>
    pair.filter((visit) => footSide(visit.foot) === side).find((visit) => visit[measure] !== null)?.[measure] ?? null;
  const [left, right] = [of("left"), of("right")];
  return left === null || right === null ? null : left - right;
}
