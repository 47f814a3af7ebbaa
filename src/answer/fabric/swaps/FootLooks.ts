/** What was seen and not measured of each foot of each set, in the order of `FootTable`: sets of one day share what was seen on it. */
export interface FootLooks {
  /** Number of the horn colour, -1 where it was not written. */
  readonly hornColour: Int8Array;
  /** 0 bare, 1 shod, -1 where it was not written. */
  readonly shoe: Int8Array;
  /** Distance of an abscess track below the coronet; NaN without one. */
  readonly markMm: Float64Array;
  /** Share of looks at a foot that tell of a mark, for the chance of a new one; at least one in a hundred. */
  readonly newMarkShare: number;
}
