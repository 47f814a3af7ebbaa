/** A threshold that was put to one foot or pair, and on what ground. It sorts records; it is no diagnosis. */
export interface ShapeFlag {
  readonly flag: "contracted" | "underrun" | "uneven";
  /** The value is past the threshold. */
  readonly raised: boolean;
  readonly value: number;
  /** How the value is held against the threshold. */
  readonly rule: "below" | "at or above" | "above";
  /** As set for the study. */
  readonly threshold: number;
  /** Where that threshold comes from; other authors draw the line elsewhere, see `shapeThresholds`. */
  readonly source: string;
}
