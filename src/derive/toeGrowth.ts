import { dateOfDay } from "../study/dateOfDay.js";
import type { Foot } from "../study/Foot.js";
import { footSide } from "./footSide.js";
import { grouped } from "../study/grouped.js";
import type { HorseStay } from "../study/HorseStay.js";
import type { Study } from "../study/Study.js";
import { type AgeClass, ageClass } from "./ageClass.js";
import { type FootDay, footDays } from "./footDays.js";
import { footShoeing } from "./footShoeing.js";
import { requiredDay } from "./requiredDay.js";
import { type Season, seasonOf } from "./seasonOf.js";
import { stayAt } from "./stayAt.js";

/** How much longer a toe was before a trim than after the one before. */
export interface ToeGrowth {
  readonly horseId: string;
  readonly yardId: string | null;
  readonly shod: "bare" | "fronts" | "all" | null;
  /** Whether this foot went bare or shod when it was measured last; keep the two apart. */
  readonly shoeing: "bare" | "shod" | null;
  readonly ageClass: AgeClass | null;
  /** Season of the middle of the span. */
  readonly season: Season;
  readonly foot: Foot;
  /** Day it was measured after a trim. */
  readonly from: string;
  /** Day it was next measured before a trim. */
  readonly to: string;
  readonly days: number;
  readonly afterTrimMm: number;
  readonly beforeTrimMm: number;
  /** Gain in toe length over the days; growth less wear, so a lower bound of growth on a bare foot. */
  readonly gainMmPerDay: number;
}

/**
 * Gain in toe length from after one trim to before the next, one row for each such pair, by horse, foot and day.
 *
 * Method: toe length before the trim minus toe length after the last one, over the calendar days between. A pair is left out when the
 * foot was worked on in between, or when it is not known whether it was: a trim between the two would hide growth. Rows of stage `single`
 * or of unknown stage are never used as a measure. Only a mark on the wall tells growth itself; a toe also wears.
 *
 * Missing: without both measures there is no row; specimens have no history.
 *
 * Source: common practice, no source.
 */
export function toeGrowth(study: Pick<Study, "visits" | "horses">): ToeGrowth[] {
  const stays = grouped(study.horses, (stay) => stay.horseId);
  return footDays(study.visits.filter(({ foot }) => footSide(foot) !== null)).flatMap((history) => {
    const rows: ToeGrowth[] = [];
    let start: { readonly day: FootDay; readonly toeMm: number } | null = null;
    for (const day of history) {
      const beforeTrimMm = toeLength(day, "before_trim");
      if (start !== null && beforeTrimMm !== null) rows.push(pairOf(start.day, day, start.toeMm, beforeTrimMm, stays));
      const afterTrimMm = toeLength(day, "after_trim");
      if (afterTrimMm !== null) start = { day, toeMm: afterTrimMm };
      else if (!leftAlone(day)) start = null;
    }
    return rows;
  });
}

function toeLength({ rows }: FootDay, stage: "before_trim" | "after_trim"): number | null {
  return rows.find((row) => row.stage === stage && row.toeLengthMm !== null)?.toeLengthMm ?? null;
}

/** Said to have had nothing done to it. */
function leftAlone({ rows }: FootDay): boolean {
  return (
    rows.some(({ workDone }) => workDone === "none") && rows.every(({ workDone }) => workDone === "none" || workDone === null)
  );
}

function pairOf(
  from: FootDay,
  to: FootDay,
  afterTrimMm: number,
  beforeTrimMm: number,
  stays: ReadonlyMap<string, readonly HorseStay[]>,
): ToeGrowth {
  const { horseId, foot } = to.rows[0]!;
  const stay = stayAt(stays.get(horseId) ?? [], horseId, to.visitDate);
  const [fromDay, toDay] = [requiredDay(from.visitDate), requiredDay(to.visitDate)];
  const days = toDay - fromDay;
  const shoeState = to.rows.find((row) => row.shoeState !== null)?.shoeState ?? null;
  return {
    horseId,
    yardId: stay?.yardId ?? null,
    shod: stay?.shod ?? null,
    shoeing: footShoeing({ foot, shoeState }, stay),
    ageClass: ageClass(stay?.birthYear ?? null, to.visitDate),
    season: seasonOf(dateOfDay(Math.floor((fromDay + toDay) / 2))),
    foot,
    from: from.visitDate,
    to: to.visitDate,
    days,
    afterTrimMm,
    beforeTrimMm,
    gainMmPerDay: (beforeTrimMm - afterTrimMm) / days,
  };
}
