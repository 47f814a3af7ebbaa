import type { Source } from "./Source.js";

/** One yard: a row of `yards.csv`. Missing is null. */
export interface Yard extends Source {
  /** Short name or code of the yard. */
  readonly yardId: string;
  /** Rain gauge that stands for this yard. null: no rainfall can be given to this yard. */
  readonly gaugeId: string | null;
  /** Distance from the yard to its gauge. In km. null: not recorded. */
  readonly gaugeKm: number | null;
  /** Ground of the fields, in the keeper's words. null: not recorded. */
  readonly ground: string | null;
  /** Bedding of the stables, in the keeper's words. null: not recorded. */
  readonly bedding: string | null;
  /** Usual hours a day out of the stable. In hours a day. null: not recorded. */
  readonly turnoutHours: number | null;
}
