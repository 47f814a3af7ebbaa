import { grouped } from "../study/grouped.js";
import { byVisit } from "./byVisit.js";
import type { FootCase } from "./FootCase.js";

/** Thrush at one horse on one visit day: any foot. */
export interface HorseCase {
  readonly horseId: string;
  readonly yardId: string | null;
  readonly visitDate: string;
  readonly month: string;
  readonly monthOfYear: number;
  /** Any graded foot is a case; null when no foot was graded. */
  readonly thrush: boolean | null;
  readonly feetGraded: number;
  readonly feetWithThrush: number;
  /** Feet recorded at the visit without a grade. */
  readonly feetMissing: number;
}

/**
 * Thrush at horse level, one row for each horse and visit day, by day and horse.
 *
 * Method: a horse is a case when any of its feet is. Specimens are left out.
 *
 * Missing: null when no foot was graded. A horse with some feet graded and none a case counts as clear on the feet that were seen, so
 * horses with feet missing can only be too low; `feetMissing` says how many.
 */
export function horseCases(feet: readonly FootCase[]): HorseCase[] {
  const sided = feet.filter(({ missing }) => missing !== "specimen");
  const visits = grouped(sided, ({ horseId, visitDate }) => `${horseId}\n${visitDate}`);
  const rows = [...visits.values()].map((visit): HorseCase => {
    const { horseId, yardId, visitDate, month, monthOfYear } = visit[0]!;
    const graded = visit.filter(({ thrush }) => thrush !== null);
    const feetWithThrush = graded.filter(({ thrush }) => thrush).length;
    return {
      horseId,
      yardId,
      visitDate,
      month,
      monthOfYear,
      thrush: graded.length === 0 ? null : feetWithThrush > 0,
      feetGraded: graded.length,
      feetWithThrush,
      feetMissing: visit.length - graded.length,
    };
  });
  return rows.sort(byVisit);
}
