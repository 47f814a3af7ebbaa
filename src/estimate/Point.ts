/** A place in the plane of the ground surface: x to the right, y upwards, both in one unit (mm for `outlines.csv`). */
export interface Point {
  readonly x: number;
  readonly y: number;
}
