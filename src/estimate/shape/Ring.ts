/** An outline ready for computing: no point repeats the one before it, the last is joined to the first, and no edge meets another. */
export interface Ring {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Length of the edge from each point to the next; that of the last point leads back to the first. */
  readonly step: Float64Array;
  readonly perimeter: number;
  /** Positive when the points run anticlockwise, with y upwards. */
  readonly signedArea: number;
  /** Centre of the area. */
  readonly centroid: { readonly x: number; readonly y: number };
  /** Points left out because they repeat the one before them. */
  readonly repeated: number;
  /** Says that an open outline was closed; null when it was not. */
  readonly note: string | null;
}
