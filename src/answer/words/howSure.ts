import { percentage } from "./percentage.js";
import { withInterval } from "./withInterval.js";

/** A proportion with its interval: `37% (95% interval 30% to 45%)`. Without limits it says that there is no interval. */
export function howSure(of: {
  readonly estimate: number;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly level: number;
}): string {
  return withInterval(of, percentage);
}
