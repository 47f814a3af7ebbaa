import type { Foot } from "../study/Foot.js";
import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import { footShoeing } from "./footShoeing.js";
import { footSide } from "./footSide.js";
import { type GrowthRates, growthRates } from "./growthRates.js";
import { requiredDay } from "./requiredDay.js";
import { requireGrowthRates } from "./requireGrowthRates.js";
import { stayAt } from "./stayAt.js";
import { trimIntervals } from "./trimIntervals.js";

/** How much toe one foot may have gained by the day its next visit is planned for. */
export interface ExpectedToeGrowth {
  readonly horseId: string;
  readonly yardId: string | null;
  readonly foot: Foot;
  readonly shoeing: "bare" | "shod" | null;
  /** Day of the visit that began the interval. */
  readonly from: string;
  readonly dueOn: string;
  readonly days: number;
  /** Growth over those days at the slowest and at the fastest rate, mm. */
  readonly slowestMm: number;
  readonly fastestMm: number;
  /** Toe length after the trim of that visit; null when it was not measured. */
  readonly toeAfterTrimMm: number | null;
  /** Toe length on the planned day at the slowest and at the fastest rate; null without the length after the trim. */
  readonly toeFromMm: number | null;
  readonly toeToMm: number | null;
}

/**
 * Toe growth to be expected by the planned date, one row for each foot of a horse with an open interval that was seen at the visit that began
 * it, by horse and foot.
 *
 * Method: planned days of the open interval (`trimIntervals`) times the rate of growth, from 0.202 to 0.31 mm a day unless other rates are
 * given, such as those estimated from the marks or toes of the same herd. It is growth of the wall: a bare foot also wears, so its toe may
 * gain less than the slowest growth. It is no advice to change an interval.
 *
 * Missing: a horse without a plan, or without an open interval, has no row; a toe that was not measured after the trim gives the growth alone.
 *
 * Errors: `bad_growth_rate`.
 *
 * Source: rates as in `growthRates`; the rest is common practice, no source.
 */
export function expectedToeGrowth(
  study: Pick<Study, "visits" | "horses" | "settings">,
  rates: GrowthRates = growthRates.usual,
): ExpectedToeGrowth[] {
  const { slowestMmPerDay, fastestMmPerDay } = requireGrowthRates(rates);
  const visits = grouped(study.visits, ({ horseId, visitDate }) => `${horseId}\n${visitDate}`);
  const rows = trimIntervals(study).flatMap(({ horseId, yardId, from, dueOn, status }) => {
    if (status !== "open" || dueOn === null) return [];
    const days = requiredDay(dueOn) - requiredDay(from);
    const stay = stayAt(study.horses, horseId, from);
    const feet = grouped(
      (visits.get(`${horseId}\n${from}`) ?? []).filter(({ foot }) => footSide(foot) !== null),
      ({ foot }) => foot,
    );
    return [...feet].map(([foot, seen]): ExpectedToeGrowth => {
      const toeAfterTrimMm = afterTrim(seen);
      const [slowestMm, fastestMm] = [days * slowestMmPerDay, days * fastestMmPerDay];
      const shoeState = seen.find((row) => row.shoeState !== null)?.shoeState ?? null;
      return {
        ...{ horseId, yardId, foot, shoeing: footShoeing({ foot, shoeState }, stay), from, dueOn, days, slowestMm, fastestMm },
        toeAfterTrimMm,
        toeFromMm: toeAfterTrimMm === null ? null : toeAfterTrimMm + slowestMm,
        toeToMm: toeAfterTrimMm === null ? null : toeAfterTrimMm + fastestMm,
      };
    });
  });
  const key = ({ horseId, foot }: ExpectedToeGrowth) => `${horseId}\n${foot}`;
  return rows.sort((a, b) => (key(a) < key(b) ? -1 : 1));
}

function afterTrim(rows: readonly FootVisit[]): number | null {
  return rows.find(({ stage, toeLengthMm }) => stage === "after_trim" && toeLengthMm !== null)?.toeLengthMm ?? null;
}
