/** One thing looked at by `underfoot doctor`. */
export interface Finding {
  readonly what: string;
  /** Whether it is as it should be. */
  readonly good: boolean;
  /** What was found. */
  readonly found: string;
  /** The command that mends it; null when there is nothing to mend. */
  readonly mend: string | null;
}
