/** How long one thing was watched and whether the event ended the watch. */
export interface SurvivalTime {
  /** Time from start to event or to the end of the watch, not negative; null when not recorded. */
  readonly time: number | null;
  /** True: the event happened at `time`. False: the watch ended first (censored). Null: not recorded. */
  readonly event: boolean | null;
}
