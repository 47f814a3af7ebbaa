/**
 * Counts of a two-by-two table: `a` cases and `b` others among the exposed, `c` cases and `d` others among the unexposed.
 */
export interface TwoByTwo {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}
