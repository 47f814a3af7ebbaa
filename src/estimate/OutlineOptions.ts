/** How strictly an outline is taken. */
export interface OutlineOptions {
  /**
   * What to do with an outline of 12 points or more that does not end near where it began: refuse it (the default), or join the ends
   * with a straight line, which the result then says. An outline whose last point repeats its first is closed.
   */
  readonly open?: "refuse" | "close";
  /** An outline is open when the gap between its ends is more than this many times its median step, and more than any step. 5 when left out. */
  readonly gapSteps?: number;
  /**
   * Smallest and largest size that is believed, mm: the diameter of a circle of the same area. An outline outside is refused, with
   * the unit that would make sense of it. Anything is believed when left out.
   */
  readonly expectedSizeMm?: readonly [number, number];
}
