/** A point on paper, mm. */
export interface PlanePoint {
  readonly xMm: number;
  readonly yMm: number;
}
