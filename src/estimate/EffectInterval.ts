import type { Interval } from "./Interval.js";

/** An effect with its standard error: of the logarithm for a ratio, of the effect itself for a difference. */
export interface EffectInterval extends Interval {
  readonly se: number | null;
}
