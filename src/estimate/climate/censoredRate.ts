import { chiSquareQuantile } from "../numeric/chiSquareQuantile.js";
import { findRoot } from "../numeric/findRoot.js";

/** A constant hazard fitted to gaps, a day being the unit. */
interface CensoredRate {
  readonly hazard: number;
  /** Standard error of its logarithm, from the observed information. */
  readonly seLog: number;
  /** Slope of the log-likelihood of one gap in the logarithm of the hazard, there. */
  readonly score: (days: number, event: boolean) => number;
  readonly profile: (level: number) => readonly [number, number];
}

/**
 * Maximum likelihood of a constant hazard from gaps with an event anywhere in them and gaps without one; there must be some of both.
 */
export function censoredRate(found: readonly number[], clear: readonly number[]): CensoredRate {
  const clearDays = clear.reduce((sum, days) => sum + days, 0);
  const score = (days: number, event: boolean, logHazard: number): number => {
    const expected = days * Math.exp(logHazard);
    return event ? expected / Math.expm1(expected) : -expected;
  };
  const slope = (logHazard: number) =>
    found.reduce((sum, days) => sum + score(days, true, logHazard), -clearDays * Math.exp(logHazard));
  const logLik = (logHazard: number) =>
    found.reduce((sum, days) => sum + Math.log(-Math.expm1(-days * Math.exp(logHazard))), -clearDays * Math.exp(logHazard));
  // Dating events to the start or the end of their gaps brackets the hazard: at the rate over all days the slope is above 0.
  const allDays = found.reduce((sum, days) => sum + days, clearDays);
  const low = Math.log(found.length / allDays) - 1e-9;
  const best = findRoot(slope, low, Math.log(found.length / clearDays) + 1e-9);
  const information = found.reduce(
    (sum, days) => {
      const expected = days * Math.exp(best);
      return sum + (expected / Math.expm1(expected)) * (expected / -Math.expm1(-expected) - 1);
    },
    clearDays * Math.exp(best),
  );
  const seLog = 1 / Math.sqrt(information);
  const drop = (level: number, at: number) => 2 * (logLik(best) - logLik(at)) - chiSquareQuantile(level, 1);
  const limit = (level: number, side: number): number => {
    let reach = side * 4 * seLog;
    while (drop(level, best + reach) < 0) reach *= 2;
    return Math.exp(findRoot((at) => drop(level, at), best, best + reach));
  };
  return {
    hazard: Math.exp(best),
    seLog,
    score: (days, event) => score(days, event, best),
    profile: (level) => [limit(level, -1), limit(level, 1)],
  };
}
