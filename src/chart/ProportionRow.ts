/** A proportion that was estimated elsewhere, ready to be drawn. Missing is null: nothing is drawn for it. */
export interface ProportionRow {
  /** Between 0 and 1. */
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly cases: number;
  /** Of how many. */
  readonly n: number;
  /** Too small a group to be judged: drawn grey and dashed, greyed in the table. */
  readonly tooFew?: boolean;
}
