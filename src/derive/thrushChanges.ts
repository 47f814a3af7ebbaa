import type { Foot } from "../study/Foot.js";
import { requiredDay } from "./requiredDay.js";
import { grouped } from "../study/grouped.js";
import type { FootCase } from "./FootCase.js";

/** What became of one foot between two graded visits that follow each other. */
export interface ThrushChange {
  readonly horseId: string;
  /** Yard at the later visit. */
  readonly yardId: string | null;
  readonly foot: Foot;
  readonly end: "fore" | "hind" | null;
  readonly from: string;
  readonly to: string;
  readonly days: number;
  readonly gradeFrom: number;
  readonly gradeTo: number;
  /** `new`: clear, then a case. `still`: a case at both. `cleared`: a case, then clear. `clear`: clear at both. */
  readonly change: "new" | "still" | "cleared" | "clear";
}

/**
 * Changes of each foot from one graded visit to the next, by horse, foot and day.
 *
 * Method: visits without a grade are passed over. A new case began at some time after `from` and not after `to`: the day is
 * interval-censored and must not be dated to `to`. Days at risk of a new case are those of rows that began clear.
 *
 * Missing: specimens and ungraded feet are left out; a foot with a single graded visit has no row.
 *
 * Source: common practice, no source.
 */
export function thrushChanges(feet: readonly FootCase[]): ThrushChange[] {
  const graded = feet.filter(({ thrush }) => thrush !== null);
  const histories = grouped(graded, ({ horseId, foot }) => `${horseId}\n${foot}`);
  return [...histories]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, history]) => {
      const inOrder = [...history].sort((a, b) => (a.visitDate < b.visitDate ? -1 : 1));
      return inOrder.slice(1).map((later, place): ThrushChange => {
        const earlier = inOrder[place]!;
        return {
          horseId: later.horseId,
          yardId: later.yardId,
          foot: later.foot,
          end: later.end,
          from: earlier.visitDate,
          to: later.visitDate,
          days: requiredDay(later.visitDate) - requiredDay(earlier.visitDate),
          gradeFrom: earlier.thrushGrade!,
          gradeTo: later.thrushGrade!,
          change: later.thrush ? (earlier.thrush ? "still" : "new") : earlier.thrush ? "cleared" : "clear",
        };
      });
    });
}
