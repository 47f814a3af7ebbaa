/**
 * An estimate and how sure it is. Missing is null, never NaN: `estimate` is null when it has no value (0/0), `lower` and
 * `upper` are null when no interval can be had, and `note` then says why. An unbounded limit or ratio is `Infinity`.
 */
export interface Interval {
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Confidence level, between 0 and 1. */
  readonly level: number;
  /** What was computed, in words. */
  readonly method: string;
  /** What else a reader must know: why a limit is missing, what was fallen back on. Null when nothing. */
  readonly note: string | null;
}
