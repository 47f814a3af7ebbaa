/** The time between two looks at the same foot (or horse) that could have had an event, and whether it had. */
export interface ObservedGap {
  readonly days: number;
  /** Whether the event had happened by the second look; null when it was not looked for. */
  readonly event: boolean | null;
  /** What hangs together: the horse, or the yard. */
  readonly cluster?: string;
}
