import type { Foot } from "../study/Foot.js";
import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import { type AgeClass, ageClass } from "./ageClass.js";
import { type FootDay, footDays } from "./footDays.js";
import { footEnd } from "./footEnd.js";
import { footShoeing } from "./footShoeing.js";
import { footSide } from "./footSide.js";
import { requiredDay } from "./requiredDay.js";
import { type Season, seasonOf } from "./seasonOf.js";
import { stayAt } from "./stayAt.js";
import { toeGrowth } from "./toeGrowth.js";

/** What was found on one foot so many days after it was last worked on; a row for a regression. */
export interface GapFinding {
  readonly horseId: string;
  readonly footId: string;
  readonly yardId: string | null;
  readonly foot: Foot;
  readonly end: "fore" | "hind" | null;
  /** Keep the two apart: the effect of a gap differs. */
  readonly shoeing: "bare" | "shod" | null;
  readonly ageClass: AgeClass | null;
  readonly season: Season;
  readonly observerId: string | null;
  /** Day it was last trimmed, shod or reset. */
  readonly from: string;
  readonly visitDate: string;
  readonly gapDays: number;
  /** Toe length now, before the trim, minus toe length after the last one; null when either was not measured. */
  readonly toeGainMm: number | null;
  /** A wall that bends away at the ground, any side. */
  readonly flare: boolean | null;
  /** A crack, any site. */
  readonly crack: boolean | null;
  /** Bars overgrown or folded. */
  readonly barsOvergrown: boolean | null;
  /** White line stretched or separated. */
  readonly whiteLineOpen: boolean | null;
}

/**
 * Overgrowth, flares and cracks beside the days since the foot was last worked on: one row for each foot and day on which the wall was
 * looked at and those days are known, by horse, foot and day.
 *
 * Method: a gap starts where the work done is `trim`, `shoe` or `reset`. Findings are those of the same day before the work; rows after a
 * trim are left out. A flare or crack that is not named counts as none only on a row that says the state of the bars or of the white line,
 * which is taken to mean that the whole wall was looked at; otherwise it is null.
 *
 * Missing: a visit in between that does not say what was done makes the gap unknown, and the foot has no row until it is worked on again.
 * A gap that was long because the horse was neglected, or short because the foot was bad, is no experiment: compare within horses.
 *
 * Source: common practice, no source.
 */
export function gapFindings(study: Pick<Study, "visits" | "horses">): GapFinding[] {
  const stays = grouped(study.horses, (stay) => stay.horseId);
  const gains = new Map(toeGrowth(study).map((row) => [`${row.horseId} ${row.foot} ${row.from} ${row.to}`, row]));
  return footDays(study.visits.filter(({ foot }) => footSide(foot) !== null)).flatMap((history) => {
    const rows: GapFinding[] = [];
    let from: string | null = null;
    for (const day of history) {
      const before = day.rows.filter(({ stage }) => stage !== "after_trim");
      const seen = before.filter(({ bars, whiteLine, flareSite, crackSite }) => bars ?? whiteLine ?? flareSite ?? crackSite);
      if (from !== null && seen.length > 0) {
        const { horseId, foot, observerId } = seen[0]!;
        const { visitDate } = day;
        const stay = stayAt(stays.get(horseId) ?? [], horseId, visitDate);
        const footId = `${horseId} ${foot}`;
        const gain = gains.get(`${footId} ${from} ${visitDate}`);
        rows.push({
          ...{ horseId, footId, yardId: stay?.yardId ?? null, foot, end: footEnd(foot) },
          shoeing: footShoeing({ foot, shoeState: seen.find(({ shoeState }) => shoeState !== null)?.shoeState ?? null }, stay),
          ageClass: ageClass(stay?.birthYear ?? null, visitDate),
          ...{ season: seasonOf(visitDate), observerId, from, visitDate },
          gapDays: requiredDay(visitDate) - requiredDay(from),
          toeGainMm: gain === undefined ? null : gain.beforeTrimMm - gain.afterTrimMm,
          ...findings(seen),
        });
      }
      from = workedOn(day) ? day.visitDate : leftAlone(day) ? from : null;
    }
    return rows;
  });
}

function findings(rows: readonly FootVisit[]): Pick<GapFinding, "flare" | "crack" | "barsOvergrown" | "whiteLineOpen"> {
  const looked = rows.some(({ bars, whiteLine }) => bars !== null || whiteLine !== null);
  const named = (found: (row: FootVisit) => boolean) => rows.some(found) || (looked ? false : null);
  const state = <State extends string>(states: readonly (State | null)[], good: State) => {
    const said = states.find((each) => each !== null);
    return said === undefined ? null : said !== good;
  };
  return {
    flare: named(({ flareSite }) => (flareSite ?? []).length > 0),
    crack: named(({ crackSite }) => (crackSite ?? []).length > 0),
    barsOvergrown: state(
      rows.map(({ bars }) => bars),
      "level",
    ),
    whiteLineOpen: state(
      rows.map(({ whiteLine }) => whiteLine),
      "tight",
    ),
  };
}

function workedOn({ rows }: FootDay): boolean {
  return rows.some(({ workDone }) => workDone === "trim" || workDone === "shoe" || workDone === "reset");
}

function leftAlone({ rows }: FootDay): boolean {
  return rows.some(({ workDone }) => workDone === "none");
}
