import { betaQuantile } from "./betaQuantile.js";
import { findRoot } from "./findRoot.js";
import { tQuantile } from "./tQuantile.js";

/** A proportion strictly between 0 and 1 with what its clusters leave of its certainty. */
interface Scale {
  readonly p: number;
  readonly se: number;
  readonly n: number;
  readonly effectiveN: number;
  readonly level: number;
  /** Quantile of t at (1 + level) / 2 that goes with the standard error. */
  readonly t: number;
}

interface Limits {
  readonly lower: number;
  readonly upper: number;
}

type Kind = "logit" | "wald" | "arcsine" | "likelihood" | "beta";

/** Limits of a proportion from a survey-like standard error, by kind; defined in `clusteredProportion`. */
export const surveyLimits: Readonly<Record<Kind, (scale: Scale) => Limits>> = {
  logit: ({ p, se, t }) => {
    const centre = Math.log(p / (1 - p));
    const reach = (t * se) / (p * (1 - p));
    const back = (x: number): number => 1 / (1 + Math.exp(-x));
    return { lower: Math.min(p, back(centre - reach)), upper: Math.max(p, back(centre + reach)) };
  },
  wald: ({ p, se, t }) => ({ lower: Math.max(0, p - t * se), upper: Math.min(1, p + t * se) }),
  arcsine: ({ p, se, t }) => {
    const angle = Math.asin(Math.sqrt(p));
    const reach = (t * se) / (2 * Math.sqrt(p * (1 - p)));
    return { lower: Math.sin(Math.max(0, angle - reach)) ** 2, upper: Math.sin(Math.min(Math.PI / 2, angle + reach)) ** 2 };
  },
  likelihood: ({ p, n, effectiveN, t }) => {
    const most = (t * t * n) / (n - 1) / (2 * effectiveN);
    // The roots are sought on the log odds, where no limit is too close to 0 or 1 to be told from it.
    const over = (eta: number): number => divergence(p, eta) - most;
    const centre = Math.log(p / (1 - p));
    const back = (x: number): number => 1 / (1 + Math.exp(-x));
    return {
      lower: Math.min(p, back(findRoot(over, centre - most / p - 40, centre))),
      upper: Math.max(p, back(findRoot(over, centre, centre + most / (1 - p) + 40))),
    };
  },
  beta: ({ p, n, effectiveN, level, t }) => {
    const tail = (1 - level) / 2;
    const size = effectiveN * (tQuantile(1 - tail, n - 1) / t) ** 2;
    return {
      lower: Math.min(p, betaQuantile(tail, size * p, size * (1 - p) + 1)),
      upper: Math.max(p, 1 - betaQuantile(tail, size * (1 - p), size * p + 1)),
    };
  },
};

/** p log(p / q) + (1 - p) log((1 - p) / (1 - q)) for the q whose log odds are `eta`. */
function divergence(p: number, eta: number): number {
  const logQ = eta > 0 ? -Math.log1p(Math.exp(-eta)) : eta - Math.log1p(Math.exp(eta));
  return p * (Math.log(p) - logQ) + (1 - p) * (Math.log1p(-p) - (logQ - eta));
}
