import { percentage } from "./percentage.js";

/** A proportion with its interval: `37% (95% interval 30% to 45%)`. Without limits it says that there is no interval. */
export function howSure(of: {
  readonly estimate: number;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly level: number;
}): string {
  const value = percentage(of.estimate);
  if (of.lower === null || of.upper === null) return `${value} (too little for an interval)`;
  return `${value} (${percentage(of.level)} interval ${percentage(of.lower)} to ${percentage(of.upper)})`;
}
