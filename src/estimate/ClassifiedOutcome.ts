/** How well an examination tells cases; taken as known, and the same whatever the exposure. */
export interface ClassifiedOutcome {
  /** Share of true cases that are called cases. */
  readonly sensitivity: number;
  /** Share of true clear feet that are called clear. */
  readonly specificity: number;
}
