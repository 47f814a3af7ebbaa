import { quantileSorted } from "simple-statistics";
import { clusteredProportion } from "./clusteredProportion.js";
import { EstimateError } from "./EstimateError.js";
import type { Interval } from "./Interval.js";
import { grouped } from "../study/grouped.js";
import { binomialRanks } from "./shape/binomialRanks.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireNumber } from "./numeric/requireNumber.js";
import { requireWithin } from "./numeric/requireWithin.js";

/** One percentile of a measure. */
export interface ReferencePercentile extends Interval {
  readonly percentile: number;
}

/** Where most values of a measure lie. */
export interface ReferenceBand {
  readonly percentiles: readonly ReferencePercentile[];
  readonly n: number;
  readonly missing: number;
  /** Horses the values come from; null when it was not said. */
  readonly clusters: number | null;
  readonly note: string;
}

/**
 * Percentiles of a measure over a herd, each with its limits: a band to hold single feet against. It says what is usual in this
 * herd, not what is sound.
 *
 * Method: percentiles interpolate between order statistics (type 7 of Hyndman and Fan, R's default); 2.5, 50 and 97.5 when left out. With
 * independent values the limits are order statistics whose binomial probability of missing the percentile is at most
 * (1 - level)/2 on either side, so that they need no distribution and cover at least the level. When a cluster is named more than
 * once the limits are the percentiles at the Wilson limits of the clustered proportion of values at or below the estimate
 * (Woodruff's method). A limit beyond the values is null, and the note says so.
 *
 * Missing: nulls are left out and counted.
 *
 * Errors (`EstimateError`): `not_a_number`; `empty`; `out_of_range` for a percentile not between 0 and 100 or a level; `length_mismatch`.
 *
 * Source: David HA, Nagaraja HN (2003) Order Statistics, 3rd ed., section 7.1; Woodruff RS (1952) J Am Stat Assoc 47:635-646.
 */
export function referenceBand(
  values: readonly (number | null)[],
  options: {
    readonly percentiles?: readonly number[];
    readonly level?: number;
    /** The horse of each value, by place. */
    readonly clusters?: readonly (string | number)[];
  } = {},
): ReferenceBand {
  const { percentiles = [2.5, 50, 97.5], clusters } = options;
  const level = requireLevel(options.level ?? 0.95);
  for (const percentile of percentiles) {
    requireWithin("percentile", percentile, 0, 100);
    if (percentile > 0 && percentile < 100) continue;
    throw new EstimateError(
      "out_of_range",
      `The percentile ${percentile} is no percentile of a herd.`,
      "Ask for more than 0 and less than 100.",
    );
  }
  if (clusters !== undefined && clusters.length !== values.length) {
    throw new EstimateError(
      "length_mismatch",
      `There are ${values.length} values and ${clusters.length} clusters.`,
      "Name the cluster of every value, in the same order.",
    );
  }
  const found: { value: number; cluster: string | number | undefined }[] = [];
  values.forEach((value, i) => {
    if (value !== null) found.push({ value: requireNumber("value", value), cluster: clusters?.[i] });
  });
  if (found.length === 0) throw new EstimateError("empty", "No value is recorded.", "Give at least one value that is not null.");
  const sorted = found.map(({ value }) => value).sort((a, b) => a - b);
  const groups = clusters === undefined ? null : [...grouped(found, ({ cluster }) => cluster).values()];
  const alike = groups !== null && groups.length < found.length ? groups.map((group) => group.map(({ value }) => value)) : null;
  const clustered = alike === null ? "" : `Values of one cluster may be alike; the limits allow for ${alike.length} clusters.`;
  return {
    percentiles: percentiles.map((percentile) => {
      const estimate = quantileSorted(sorted, percentile / 100);
      const limits = alike === null ? ranked(sorted, percentile, level) : woodruff(sorted, estimate, percentile, alike, level);
      return { percentile, estimate, level, ...limits };
    }),
    n: found.length,
    missing: values.length - found.length,
    clusters: groups?.length ?? null,
    note:
      groups === null
        ? "Values count as independent: when several come from one horse, name the horses, or the limits are too narrow."
        : clustered,
  };
}

type Limits = Pick<Interval, "lower" | "upper" | "method" | "note">;

function ranked(sorted: readonly number[], percentile: number, level: number): Limits {
  const { low, high } = binomialRanks(sorted.length, percentile / 100, level);
  const words = { method: "Order statistics by binomial probabilities" };
  const lower = low === null ? null : sorted[low - 1]!;
  const upper = high === null ? null : sorted[high - 1]!;
  return { lower, upper, ...words, note: beyond(lower, upper, sorted.length) };
}

function woodruff(
  sorted: readonly number[],
  estimate: number,
  percentile: number,
  clusters: readonly (readonly number[])[],
  level: number,
): Limits {
  const share = clusteredProportion(
    clusters.map((cluster) => ({ cases: cluster.filter((value) => value <= estimate).length, n: cluster.length })),
    { level },
  );
  const method = `Woodruff's limits, ${clusters.length} clusters`;
  // Shares are moved by what the estimate's own share lacks of its percentile, which is less than one value.
  const shift = percentile / 100 - share.estimate;
  const at = (limit: number | null): number | null => {
    if (limit === null) return null;
    const place = limit + shift;
    return place * sorted.length < 1 || place * sorted.length > sorted.length - 1 ? null : quantileSorted(sorted, place);
  };
  const [lower, upper] = [at(share.lower), at(share.upper)];
  return { lower, upper, method, note: share.lower === null ? share.note : beyond(lower, upper, sorted.length) };
}

function beyond(lower: number | null, upper: number | null, n: number): string | null {
  if (lower !== null && upper !== null) return null;
  const which = lower === null && upper === null ? "Both limits lie" : `The ${lower === null ? "lower" : "upper"} limit lies`;
  return `${which} beyond the ${n} values there are.`;
}
