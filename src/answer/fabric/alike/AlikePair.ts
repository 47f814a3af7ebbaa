/** Two sets, by their places in the table, that are more alike than anybody reads twice. */
export interface AlikePair {
  readonly before: number;
  readonly now: number;
  /** Measures that both have, over all pairs of feet. */
  readonly compared: number;
  readonly equal: number;
  /** Chance of so many equal ones or more, were they read anew. */
  readonly p: number;
}
