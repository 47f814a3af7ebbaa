import type { Foot } from "./Foot.js";
import type { Source } from "./Source.js";

/** One point of a traced outline: a row of `outlines.csv`. Missing is null. */
export interface OutlinePoint extends Source {
  /** The horse, as named in horses.csv. */
  readonly horseId: string;
  /** Calendar day the outline was traced. `YYYY-MM-DD`. */
  readonly visitDate: string;
  /** Foot that was traced. F or H alone for a specimen of unknown side. */
  readonly foot: Foot;
  /** What was traced: the bearing border of the wall, or the frog. */
  readonly ring: "wall" | "frog";
  /** Number of the point along the ring, or the landmark toe, heel_medial or heel_lateral. */
  readonly point: string;
  /** Across the foot. In mm. */
  readonly xMm: number;
  /** Along the foot. In mm. */
  readonly yMm: number;
}
