import { fabricIssue } from "./fabricIssue.js";
import { thrushCases } from "../../derive/thrushCases.js";
import { mantelHaenszel } from "../../estimate/mantelHaenszel.js";
import type { TwoByTwo } from "../../estimate/TwoByTwo.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";

/** Level of the interval: several observers are held up, and a shift must be plain. Common practice, no source. */
const LEVEL = 0.999;
/** Odds must differ by more than this at the near end of the interval; smaller shifts are for an analysis to allow for. Common practice, no source. */
const LEAST_RATIO = 1.5;

interface HorseVisit {
  readonly observerId: string;
  readonly stratum: string;
  readonly thrush: boolean;
}

/**
 * Observers whose horses have thrush far more, or far less, often than those of others in the same yards and quarters: their eye differs, and a
 * change of observer would be taken for a change of feet.
 *
 * Method: a visit to a horse counts as a case when any graded foot does. The odds under one observer against those under all others are
 * pooled over yards and quarters of the year (Mantel-Haenszel), so that neither stands in for the observer; the 99.9 % interval must lie beyond
 * 1.5 on one side. Repeated visits to a horse within a quarter are taken as independent, which the level allows for.
 *
 * Missing: visits without a grade, observer or yard are left out. Yards and quarters with one observer say nothing: where each yard has its own,
 * a shift cannot be told from the yard.
 *
 * Source: Mantel N, Haenszel W (1959) J Natl Cancer Inst 22:719-748; the limits are own.
 */
export function observerGradeShift(study: Pick<Study, "visits" | "horses" | "settings">): Issue[] {
  const graded = thrushCases(study).filter(
    ({ thrush, observerId, yardId }) => thrush !== null && observerId !== null && yardId !== null,
  );
  const visits = [...grouped(graded, (row) => `${row.horseId}\n${row.visitDate}\n${row.observerId ?? ""}`).values()].flatMap(
    (feet): HorseVisit[] => {
      const [first] = feet;
      if (first === undefined) return [];
      const quarter = `${first.visitDate.slice(0, 4)} ${Math.ceil(first.monthOfYear / 3)}`;
      return [
        {
          observerId: first.observerId ?? "",
          stratum: `${first.yardId ?? ""}\n${quarter}`,
          thrush: feet.some(({ thrush }) => thrush === true),
        },
      ];
    },
  );
  const observers = [...grouped(visits, ({ observerId }) => observerId).keys()].sort();
  return observers.flatMap((observerId, place) => {
    // Of two observers the second says what the first does.
    if (observers.length < 2 || (observers.length === 2 && place === 0)) return [];
    const strata = [...grouped(visits, ({ stratum }) => stratum).values()]
      .map((of) => tableOf(of, observerId))
      .filter(({ a, b, c, d }) => a + b > 0 && c + d > 0);
    if (strata.length === 0) return [];
    const { estimate, lower, upper } = mantelHaenszel(strata, { level: LEVEL });
    if (estimate === null || lower === null || upper === null) return [];
    if (lower <= LEAST_RATIO && upper >= 1 / LEAST_RATIO) return [];
    const others = observers.length === 2 ? (observers[0] ?? "") : "others";
    return issueOf(study, visits, [observerId, others], strata, [estimate, lower, upper]);
  });
}

function tableOf(visits: readonly HorseVisit[], observerId: string): TwoByTwo {
  const count = (own: boolean, thrush: boolean) =>
    visits.filter((visit) => (visit.observerId === observerId) === own && visit.thrush === thrush).length;
  return { a: count(true, true), b: count(true, false), c: count(false, true), d: count(false, false) };
}

function issueOf(
  study: Pick<Study, "visits" | "settings">,
  visits: readonly HorseVisit[],
  [observerId, others]: readonly [string, string],
  strata: readonly TwoByTwo[],
  odds: readonly [number, number, number],
): Issue[] {
  const sum = (cell: keyof TwoByTwo) => strata.reduce((total, stratum) => total + stratum[cell], 0);
  const [ratio, lower, upper] = odds.map((value) => value.toFixed(1));
  const first = study.visits.find((row) => row.observerId === observerId && row.thrushGrade !== null);
  if (first === undefined) return [];
  const own = visits.filter((visit) => visit.observerId === observerId).length;
  return [
    fabricIssue({
      file: first.file,
      line: first.line,
      column: "observer_id",
      code: "grades_shift_with_observer",
      found:
        `in the same yards and quarters, grade ${study.settings.caseGrade} or more was found at ${sum("a")} of ${sum("a") + sum("b")} visits by ` +
        `${observerId} and at ${sum("c")} of ${sum("c") + sum("d")} by ${others}: odds ratio ${ratio ?? ""} (99.9 % interval ${lower ?? ""} to ` +
        `${upper ?? ""}; ${own} graded visits by ${observerId} in all)`,
      hint: "Let both observers grade the same feet, each without the other's grade, and compare before and after a change of observer apart.",
    }),
  ];
}
