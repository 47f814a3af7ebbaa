/** Something wrong with a traced outline. */
export interface OutlineFault {
  /** Short stable name, snake case. */
  readonly code:
    | "no_wall"
    | "too_few_points"
    | "too_many_points"
    | "unknown_point"
    | "missing_landmark"
    | "landmark_off_wall"
    | "crossing"
    | "long_step"
    | "open"
    | "repeated_place"
    | "unlikely_size"
    | "other_hand";
  readonly ring: "wall" | "frog";
  /** `unusable`: the ring is not to be used; `warning`: look at it. */
  readonly severity: "unusable" | "warning";
  /** One sentence: what was found. */
  readonly message: string;
  /** One sentence: what to do about it. */
  readonly hint: string;
}
