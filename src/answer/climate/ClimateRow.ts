import type { FootCase } from "../../derive/FootCase.js";

/** A foot at a visit with all that the climate study sets beside it; exposures are further columns, named as in `exposureBeforeVisits`. */
export interface ClimateRow extends FootCase {
  readonly case: boolean | null;
  readonly shodFoot: "bare" | "shod" | null;
  /** Days since the horse's visit before; null at its first. */
  readonly intervalDays: number | null;
  readonly hornColour: "dark" | "light" | "striped" | null;
  readonly ground: string | null;
  readonly bedding: string | null;
  readonly turnoutHours: number | null;
  readonly gaugeId: string | null;
  readonly linkage: string;
  /** Rain of the last admissible day, the day before, and so on; null when one of the days is not known. */
  readonly rainMmByDay: readonly (number | null)[] | null;
}
