import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";
import { byVisit } from "./byVisit.js";
import { footEnd } from "./footEnd.js";
import { hoofShape } from "./hoofShape.js";

/** Mean shape of the fore and of the hind feet of a horse, on one day, at one stage. */
export interface FrontHindShape {
  readonly horseId: string;
  readonly visitDate: string;
  readonly stage: FootVisit["stage"];
  /** Mean width over length of the fore feet; null when none was measured. */
  readonly foreShapeIndex: number | null;
  readonly hindShapeIndex: number | null;
  /** Fore minus hind; above 0 the fore feet are rounder. */
  readonly shapeIndexDifference: number | null;
  readonly foreWidthMm: number | null;
  readonly hindWidthMm: number | null;
  /** Fore minus hind, mm. */
  readonly widthDifferenceMm: number | null;
}

/**
 * Fore feet beside hind feet of the same horse: one row for each horse, day and stage with at least one width or index, by day and horse.
 *
 * Method: mean over the feet of an end that were measured. The pairing takes out the size of the horse.
 *
 * Missing: an end without a measure is null, and so is its difference. Stages are never mixed; an unknown stage is its own.
 */
export function frontHindShape(visits: readonly FootVisit[]): FrontHindShape[] {
  const measured = visits.filter((visit) => visit.hoofWidthMm !== null || hoofShape(visit).shapeIndex !== null);
  const days = grouped(measured, (visit) => [visit.horseId, visit.visitDate, visit.stage].join("\n"));
  const rows = [...days.values()].map((day): FrontHindShape => {
    const { horseId, visitDate, stage } = day[0]!;
    const fore = day.filter((visit) => footEnd(visit.foot) === "fore");
    const hind = day.filter((visit) => footEnd(visit.foot) === "hind");
    const index = [fore, hind].map((feet) => meanOf(feet.map((visit) => hoofShape(visit).shapeIndex)));
    const width = [fore, hind].map((feet) => meanOf(feet.map((visit) => visit.hoofWidthMm)));
    const [foreShapeIndex = null, hindShapeIndex = null] = index;
    const [foreWidthMm = null, hindWidthMm = null] = width;
    return {
      horseId,
      visitDate,
      stage,
      foreShapeIndex,
      hindShapeIndex,
      shapeIndexDifference: difference(foreShapeIndex, hindShapeIndex),
      foreWidthMm,
      hindWidthMm,
      widthDifferenceMm: difference(foreWidthMm, hindWidthMm),
    };
  });
  return rows.sort(byVisit);
}

function meanOf(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length;
}

function difference(of: number | null, less: number | null): number | null {
  return of === null || less === null ? null : of - less;
}
