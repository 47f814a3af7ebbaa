import type { OutlineFault } from "../study/OutlineFault.js";
import type { OutlinePoint } from "../study/OutlinePoint.js";
import type { PlanePoint } from "../study/PlanePoint.js";

/** One tracing of one foot: its rings with the points in order, its landmarks, and what is wrong with it. */
export interface TracedOutline extends Pick<
  OutlinePoint,
  "file" | "line" | "horseId" | "visitDate" | "foot" | "stage" | "tracing" | "observerId"
> {
  readonly end: "fore" | "hind" | null;
  readonly side: "left" | "right" | null;
  /** Bearing border of the wall, a closed ring: the last point is followed by the first. */
  readonly wall: readonly PlanePoint[];
  /** Border of the frog, a closed ring; empty when it was not traced or is not usable. */
  readonly frog: readonly PlanePoint[];
  /** The landmarks on the wall; null unless all three are there. */
  readonly landmarks: {
    readonly toe: PlanePoint;
    readonly heelMedial: PlanePoint;
    readonly heelLateral: PlanePoint;
  } | null;
  /** x was turned about, so that a left foot lies as a right one. */
  readonly mirrored: boolean;
  /** Turned and moved so that the middle of the heels lies at 0, 0 and the toe straight above it. */
  readonly aligned: boolean;
  readonly faults: readonly OutlineFault[];
  /** No fault of the wall forbids its use. */
  readonly usable: boolean;
}
