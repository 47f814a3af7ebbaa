/** What was read of subjects on days: one row an occasion, one column a measure. The rows of a subject stand together, in order of day. */
export interface Readings {
  readonly columns: number;
  /** Row by row; NaN where nothing was read. */
  readonly values: Readonly<ArrayLike<number>>;
  /** First row of each subject, and the number of rows at the end. */
  readonly starts: Readonly<ArrayLike<number>>;
  /** Number of the day of each row among the days of its subject, from 0: rows of one day are no history of each other. */
  readonly days: Readonly<ArrayLike<number>>;
}
