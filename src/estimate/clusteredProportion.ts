import { clopperPearsonInterval } from "./clopperPearsonInterval.js";
import type { ClusterCount } from "./ClusterCount.js";
import { clusterCorrelation } from "./clusterCorrelation.js";
import type { Interval } from "./Interval.js";
import { normalQuantile } from "./numeric/normalQuantile.js";
import { requireClusters } from "./numeric/requireClusters.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireOneOf } from "./numeric/requireOneOf.js";
import { surveyLimits } from "./numeric/surveyLimits.js";
import { tQuantile } from "./numeric/tQuantile.js";
import { wilsonLimits } from "./numeric/wilsonLimits.js";

/** How limits of a proportion of clustered things are made; see `clusteredProportion`. */
export type ClusteredIntervalKind = "wilson" | "logit" | "wald" | "arcsine" | "likelihood" | "beta";

/** A proportion of clustered things. */
export interface ClusteredProportion extends Interval {
  readonly estimate: number;
  /** Standard error that allows for the clusters; null when it cannot be had. */
  readonly se: number | null;
  /** How many times larger the variance is than that of as many independent things; null when it cannot be had. */
  readonly designEffect: number | null;
  /** Analysis-of-variance intraclass correlation; null when it cannot be had. */
  readonly icc: number | null;
  /** Number of independent things that would be as sure; the one Wilson limits rest on. */
  readonly effectiveN: number | null;
  /** Interval on the logit scale with Student's t on clusters - 1 degrees of freedom; null limits as for `lower`. */
  readonly logitT: { readonly lower: number | null; readonly upper: number | null };
  /** Clusters that hold at least one observation. */
  readonly clusters: number;
  readonly n: number;
  readonly cases: number;
}

interface Limits {
  readonly lower: number | null;
  readonly upper: number | null;
}

/**
 * Proportion of clustered things that are cases, such as feet within horses or horses within yards, with limits that allow
 * for members of a cluster being alike.
 *
 * Method: all cases over all observations. The variance is that of a ratio between clusters,
 * K/(K-1) x sum (y_i - n_i p)^2 / N^2; over the binomial variance p(1-p)/N it gives the design effect. (Programs that take the
 * binomial variance over N-1 give a design effect (N-1)/N times ours.) `lower` and `upper` are by `interval`: `wilson`, the default, the
 * Wilson score interval on the effective number N / design effect, where a design effect below 1 counts as 1. The others use Student's t
 * on K-1 degrees of freedom and are wider when clusters are few: `logit`, `wald` and `arcsine` take the standard error to that scale
 * (plain and arcsine limits are cut at 0 and 1); `likelihood` holds the binomial deviance, over its dispersion N/(N-1), below t^2 x
 * design effect; `beta` is the Clopper-Pearson interval on the effective number, that times (t on N-1 / t on K-1)^2 (Korn and
 * Graubard). `logitT` has the logit limits beside any of them.
 *
 * When no spread between clusters is left to measure, the rule, whatever `interval`, is: all or none are cases, exact
 * (Clopper-Pearson) limits on the number of clusters, which hold however alike the members of a cluster are; every cluster has the same
 * proportion, Wilson limits with design effect 1. `note` then says so, `se` and `designEffect` are null and both intervals are the same.
 *
 * Missing: whoever counts leaves the missing out of `n`. Clusters without an observation do not count. With one cluster there
 * is an estimate and no interval.
 *
 * Errors: `not_a_number`, `not_a_count`, `out_of_range`; `empty` when no cluster holds an observation.
 *
 * Source: Rao JNK, Scott AJ (1992) Biometrics 48:577-585; Cochran WG (1977) Sampling Techniques, 3rd ed., ratio estimator;
 * Korn EL, Graubard BI (1998) Surv Methodol 24:193-201 for intervals on effective numbers.
 */
export function clusteredProportion(
  clusters: readonly ClusterCount[],
  options: { readonly level?: number; readonly interval?: ClusteredIntervalKind } = {},
): ClusteredProportion {
  const interval = requireOneOf("interval", options.interval ?? "wilson", Object.keys(WORDS) as ClusteredIntervalKind[]);
  const level = requireLevel(options.level ?? 0.95);
  const filled = requireClusters(clusters);
  const { icc, n, cases } = clusterCorrelation(filled);
  const k = filled.length;
  const p = cases / n;
  const base = { estimate: p, level, icc, clusters: k, n, cases, se: null, designEffect: null };
  const z = normalQuantile((1 + level) / 2);
  if (k === 1) {
    const none: Limits = { lower: null, upper: null };
    const note = "All observations come from one cluster, so how far clusters differ is not known and no interval is given.";
    return { ...base, ...none, effectiveN: null, logitT: none, method: "Proportion, one cluster", note };
  }
  if (cases === 0 || cases === n) {
    const { lower, upper } = clopperPearsonInterval(cases === 0 ? 0 : k, k, { level });
    const method = `Clopper-Pearson exact interval on ${k} clusters`;
    const note = `${cases === 0 ? "None" : "All"} of the ${n} are cases, so the spread between clusters cannot be measured; each cluster counts as one observation.`;
    return { ...base, lower, upper, effectiveN: k, logitT: { lower, upper }, method, note };
  }
  const variance = ((k / (k - 1)) * filled.reduce((sum, c) => sum + (c.cases - c.n * p) ** 2, 0)) / (n * n);
  const designEffect = variance / ((p * (1 - p)) / n);
  if (designEffect < 1e-12) {
    const limits = wilsonLimits(p, n, z);
    const note =
      "Every cluster has the same proportion, so the spread between clusters cannot be measured; observations count as independent.";
    return { ...base, ...limits, effectiveN: n, logitT: limits, method: "Wilson score interval", note };
  }
  const se = Math.sqrt(variance);
  const effectiveN = n / Math.max(1, designEffect);
  const scale = { p, se, n, effectiveN, level, t: tQuantile((1 + level) / 2, k - 1) };
  const limits = interval === "wilson" ? wilsonLimits(p, effectiveN, z) : surveyLimits[interval](scale);
  const floored = interval === "wilson" || interval === "likelihood" || interval === "beta";
  return {
    ...base,
    ...limits,
    se,
    designEffect,
    effectiveN,
    logitT: surveyLimits.logit(scale),
    method: `${WORDS[interval]}, ${k} clusters`,
    note: designEffect < 1 && floored ? "The design effect is below 1 and was counted as 1." : null,
  };
}

const WORDS: Readonly<Record<ClusteredIntervalKind, string>> = {
  wilson: "Wilson score interval on the effective number of observations",
  logit: "Interval by t on the logit scale",
  wald: "Wald interval by t",
  arcsine: "Interval by t on the arcsine scale",
  likelihood: "Likelihood interval by t, deviance over the design effect",
  beta: "Korn-Graubard exact interval on the effective number of observations",
};
