import { points } from "./points.js";
import { withInterval } from "./withInterval.js";

/** A difference of two proportions with its interval: `+7 points (95% interval +4 to +10)`. */
export function pointsInterval(of: {
  readonly estimate: number;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly level: number;
}): string {
  return withInterval(of, points, (value) => points(value).replace(/ points?$/, ""));
}
