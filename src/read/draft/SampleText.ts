/** One distinct text of a column, not blank. */
export interface SampleText {
  readonly text: string;
  readonly count: number;
  /** Where it is first met: `line 3`, with the file when there are several. */
  readonly place: string;
}
