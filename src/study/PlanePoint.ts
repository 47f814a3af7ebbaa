/** A place in the plane of the ground surface, mm. */
export interface PlanePoint {
  readonly x: number;
  readonly y: number;
}
