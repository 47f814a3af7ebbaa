/** Rows left out of an estimate for one reason. A row is counted once, under the first column that lets it down. */
export interface Dropped {
  readonly column: string;
  /** In words: `wet is not recorded`, `feet is 0`. */
  readonly reason: string;
  readonly count: number;
}
