import type { Foot } from "./Foot.js";
import type { Source } from "./Source.js";

/** One point of a traced outline: a row of `outlines.csv`. Missing is null. */
export interface OutlinePoint extends Source {
  /** The horse, as named in horses.csv. */
  readonly horseId: string;
  /** Calendar day the outline was traced. `YYYY-MM-DD`. */
  readonly visitDate: string;
  /** Foot that was traced. F or H alone for a specimen of unknown side, U for one of unknown end, LF_specimen and the like for one of known side: a foot without a live horse. */
  readonly foot: Foot;
  /** Whether it was traced before or after trimming; single when there was only one occasion. null: unknown; kept apart from both stages. */
  readonly stage: "before_trim" | "after_trim" | "single" | null;
  /** Which tracing of this foot on this day and at this stage, where it was traced more than once. null: the only tracing, or the first. */
  readonly tracing: string | null;
  /** Who traced, as a code. null: not recorded. */
  readonly observerId: string | null;
  /** What was traced: the bearing border of the wall, or the frog. */
  readonly ring: "wall" | "frog";
  /** Number of the point along the ring, or the landmark toe, heel_medial or heel_lateral. */
  readonly point: string;
  /** Across the foot. In mm. */
  readonly xMm: number;
  /** Along the foot. In mm. */
  readonly yMm: number;
}
