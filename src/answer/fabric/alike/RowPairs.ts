import type { FootVisit } from "../../../study/FootVisit.js";

/** Rows of one set held against rows of another, or of the other side: how many measures are the same. */
export interface RowPairs {
  /** Who wrote them; readings are alike more often with one who reads coarsely. */
  readonly observerId: string | null;
  /** The rows compared, two and two. */
  readonly pairs: readonly (readonly [FootVisit, FootVisit])[];
}
