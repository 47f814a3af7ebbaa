/** One column of a design matrix: its coefficient's name and a value for each row used. */
export interface DesignColumn {
  readonly name: string;
  readonly values: Float64Array;
}
