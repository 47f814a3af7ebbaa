/** The most likely deviation of one group from what its terms lead one to expect, given everything estimated. */
export interface ConditionalMode {
  /** Values that name the group, outermost first: a yard; a yard and a horse. */
  readonly group: readonly (string | number | boolean)[];
  /** On the scale of the linear predictor (log odds, or the outcome itself), drawn towards 0 the more, the less is known of the group. 0 when the SD of such groups is 0. */
  readonly mode: number;
  /** Spread of what it could be instead, from the curvature at the mode, with the estimates taken as known. */
  readonly sd: number;
}
