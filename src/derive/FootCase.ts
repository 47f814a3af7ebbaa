import type { Foot } from "../study/Foot.js";
import type { FootVisit } from "../study/FootVisit.js";

/**
 * Why a foot has no grade at a visit.
 * - `not_examined`: recorded as not looked at.
 * - `not_said`: neither a yes or no nor any finding is recorded.
 * - `not_graded`: looked at, but the frog was not graded.
 * - `specimen`: a detached foot of unknown side, which belongs to no foot of a herd.
 */
export type MissingGrade = "not_examined" | "not_said" | "not_graded" | "specimen";

/** Thrush at one foot on one visit day under one case definition. */
export interface FootCase {
  readonly horseId: string;
  /** Yard of the horse on that day; null when it is not known. */
  readonly yardId: string | null;
  readonly visitDate: string;
  /** `YYYY-MM`. */
  readonly month: string;
  /** 1 January to 12 December. */
  readonly monthOfYear: number;
  readonly foot: Foot;
  readonly end: "fore" | "hind" | null;
  readonly side: "left" | "right" | null;
  readonly thrushGrade: number | null;
  /** Clefts named in the rows of that day; null when none was recorded. */
  readonly thrushSite: FootVisit["thrushSite"];
  /** Grade at or above the case grade; null when there is no grade. */
  readonly thrush: boolean | null;
  readonly missing: MissingGrade | null;
  readonly notExaminedReason: string | null;
  readonly observerId: string | null;
  readonly reason: FootVisit["reason"];
  readonly shod: "bare" | "fronts" | "all" | null;
  readonly surfaceTreated7d: boolean | null;
}
