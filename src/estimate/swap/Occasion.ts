/** What was read of one subject at one time, one value a measure; null where it was not read. */
export interface Occasion {
  /** Occasions of one day are no history of each other. */
  readonly day: string;
  readonly values: readonly (number | null)[];
}
