/** The doubts that `fabricChecks` can raise, all of them warnings: what each says. Codes are stable. */
export const fabricCodes = {
  ends_swapped: "Front and hind feet of a horse on one day were probably exchanged, judged by its other days.",
  sides_swapped: "Left and right feet of a horse on one day were probably exchanged, judged by its other days.",
  diagonals_swapped: "Diagonal feet of a horse on one day were probably exchanged, judged by its other days.",
  outlines_against_ends:
    "Traced outlines of front and hind feet of a horse on one day were probably exchanged, judged by their shape.",
  horses_swapped: "The rows of two horses of a yard on one day were probably exchanged.",
  wall_sides_swapped: "Inner and outer wall angles of a horse on one day were probably exchanged on all feet.",
  ends_reversed_throughout: "An observer's horses are mostly wider behind than in front.",
  mark_out_of_step: "An abscess track climbed the wall, or went down faster than horn grows.",
  unit_run: "A run of readings looks like another unit: centimetres, inches or radians, or pounds for kilograms.",
  heaped_digits: "An observer's readings of a measure end in 0 or 5 far too often.",
  copied_forward: "The measures of a horse are exactly those of its visit before.",
  same_rows_twice: "The measures of a horse stand twice on one day, under two stages or observers.",
  left_equals_right: "Left and right feet are exactly alike in nearly every measure.",
  same_rows_two_horses: "The same measures stand under the names of two horses on one day.",
  spelled_two_ways: "One horse, observer or yard seems to be spelled in several ways.",
  grades_never_vary: "All thrush grades of an observer are the same, although others' horses make that improbable.",
  grades_shift_with_observer: "An observer finds thrush far more or less often than others in the same yards and quarters.",
  gauge_stuck: "A gauge read nothing for weeks while another had much rain, or the very same rain day after day.",
  gauges_identical: "Two gauges have the very same rain.",
  visits_without_rain: "Gaps of a gauge leave a tenth or more of the visits without the rain before them.",
} as const;

/** Code of a doubt that `fabricChecks` raises. */
export type FabricCode = keyof typeof fabricCodes;
