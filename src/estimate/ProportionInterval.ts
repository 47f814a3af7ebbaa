import type { Interval } from "./Interval.js";

/** A proportion of `cases` among `n`, with limits between 0 and 1. */
export interface ProportionInterval extends Interval {
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
  readonly cases: number;
  readonly n: number;
}
