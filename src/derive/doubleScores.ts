import type { Foot } from "../study/Foot.js";
import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";
import { byVisit } from "./byVisit.js";

/** The same foot, graded on the same day by two observers. */
export interface DoubleScore {
  readonly horseId: string;
  readonly visitDate: string;
  readonly foot: Foot;
  /** The observer whose code comes first in code order. */
  readonly firstObserverId: string;
  readonly secondObserverId: string;
  readonly firstGrade: number;
  readonly secondGrade: number;
}

/**
 * Thrush grades of two observers side by side, one row for each pair of observers, foot and day, by day, horse and foot.
 *
 * Method: rows of one horse, foot and day with different observers, taken before the trim or with no trim between them (rows after
 * the trim are left out, because a trim changes the frog). The second observer's row may stand under another stage. Of several
 * grades of one observer the first counts. Three observers make three pairs.
 *
 * Missing: rows without a grade or an observer make no pair. Whether the observers knew each other's grade is not recorded.
 *
 * Source: own.
 */
export function doubleScores(visits: readonly FootVisit[]): DoubleScore[] {
  const graded = visits.filter((row) => row.stage !== "after_trim" && row.observerId !== null && row.thrushGrade !== null);
  const looks = grouped(graded, ({ horseId, visitDate, foot }) => `${horseId}\n${visitDate}\n${foot}`);
  const pairs = [...looks.values()].flatMap((look) => {
    const grades = new Map<string, number>();
    for (const row of look) if (!grades.has(row.observerId!)) grades.set(row.observerId!, row.thrushGrade!);
    const { horseId, visitDate, foot } = look[0]!;
    const inOrder = [...grades].sort(([a], [b]) => (a < b ? -1 : 1));
    return inOrder.flatMap(([firstObserverId, firstGrade], place) =>
      inOrder.slice(place + 1).map(([secondObserverId, secondGrade]): DoubleScore => ({
        horseId,
        visitDate,
        foot,
        firstObserverId,
        secondObserverId,
        firstGrade,
        secondGrade,
      })),
    );
  });
  return pairs.sort((a, b) => byVisit(a, b) || (a.foot < b.foot ? -1 : a.foot > b.foot ? 1 : 0));
}
