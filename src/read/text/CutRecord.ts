/** A record and where its cells stand in it, so that no cell need be cut out to be looked at. It holds until the next record is cut. */
export interface CutRecord {
  readonly text: string;
  /** Number of cells. */
  readonly width: number;
  /** Where cell `i` begins, at `2 * i`, and ends, at `2 * i + 1`, in `text`; what stands behind the last cell means nothing. */
  readonly bounds: readonly number[];
}
