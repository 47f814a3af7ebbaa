import { normalQuantile } from "../numeric/normalQuantile.js";
import type { RelativeSpreads } from "./RandomStructure.js";
import type { SpreadErrors } from "./spreadErrors.js";

/** The SD of one random effect, in the units of the outcome. */
export interface SpreadEstimate {
  readonly sd: number;
  /** Standard error of the logarithm of `sd`; null when `sd` is 0 or the correlation 1 or -1. */
  readonly seLogSd: number | null;
  /** Wald limits on the log scale; null with `seLogSd`. */
  readonly lower: number | null;
  readonly upper: number | null;
  /** Whether the likelihood is highest with no difference at all. */
  readonly boundary: boolean;
}

/** Limits of SDs and correlation, and in words what lies on a boundary; `kinds` names the SDs. */
export function spreadTable(
  { sds, correlation }: RelativeSpreads,
  errors: SpreadErrors,
  residualSd: number,
  level: number,
  kinds: readonly string[],
): {
  readonly spreads: readonly SpreadEstimate[];
  readonly correlation: { readonly estimate: number; readonly lower: number | null; readonly upper: number | null } | null;
  readonly boundary: boolean;
  readonly words: readonly string[];
} {
  const z = normalQuantile((1 + level) / 2);
  const spreads = sds.map((relative, k) => {
    const sd = residualSd * relative;
    const seLogSd = errors.logSds[k] ?? null;
    const limit = (side: number) => (seLogSd === null ? null : sd * Math.exp(side * z * seLogSd));
    return { sd, seLogSd, lower: limit(-1), upper: limit(1), boundary: sd === 0 };
  });
  const bound = correlation !== null && Math.abs(correlation) === 1;
  const logit = correlation === null ? 0 : Math.log((1 + correlation) / (1 - correlation));
  const end = (side: number) => (errors.correlation === null ? null : Math.tanh((logit + side * z * errors.correlation) / 2));
  return {
    spreads,
    correlation: correlation === null ? null : { estimate: correlation, lower: end(-1), upper: end(1) },
    boundary: bound || spreads.some(({ sd }) => sd === 0),
    words: [
      ...spreads.flatMap(({ sd }, k) =>
        sd === 0
          ? [
              `The likelihood is highest with no difference between ${kinds[k]!} beyond chance and terms: their SD is put at 0, without limits. That is not proof that they are alike.`,
            ]
          : [],
      ),
      ...(bound
        ? [
            `The likelihood is highest with a correlation of ${correlation} between intercepts and slopes: the data do not carry both.`,
          ]
        : []),
    ],
  };
}
