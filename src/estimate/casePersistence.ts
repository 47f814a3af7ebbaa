import { grouped } from "../study/grouped.js";
import { clusteredProportion } from "./clusteredProportion.js";
import { describe, type Description } from "./describe.js";
import { requireRows } from "./design/requireRows.js";
import { EstimateError } from "./EstimateError.js";
import type { Interval } from "./Interval.js";
import { intervalCensoredIncidence, type CensoredIncidence } from "./intervalCensoredIncidence.js";
import { requireFinding } from "./numeric/requireFinding.js";
import { requireLevel } from "./numeric/requireLevel.js";
import type { ObservedGap } from "./ObservedGap.js";
import { wilsonInterval } from "./wilsonInterval.js";

/** How often a case is still one at the next look. */
export interface CasePersistence {
  /** Share of cases that were still cases at the next look. */
  readonly share: Interval & {
    readonly cases: number;
    readonly n: number;
    readonly missing: number;
    /** Clusters the limits allow for; null when gaps count as independent. */
    readonly clusters: number | null;
  };
  /** How long it was to the next look, days: the share means nothing without it. */
  readonly gapDays: Description;
  /** Rate at which cases cleared, somewhere in their gaps. */
  readonly clearing: CensoredIncidence;
}

/**
 * Persistence of cases: of the feet that were cases at a look, the share that still were at the next, and the rate of clearing behind it. `event` of a
 * row says that the case had cleared by the next look. A foot that cleared and came back in between counts as still a case.
 *
 * Method: rows with `cluster` (yard, or horse) get the logit-t limits of `clusteredProportion`, others Wilson limits. The rate is that of
 * `intervalCensoredIncidence`, which allows for looks further apart.
 *
 * Missing: rows with `event` null are left out and counted.
 *
 * Errors: `empty` when no row is left; those of `intervalCensoredIncidence`.
 *
 * Source: common practice, no source.
 */
export function casePersistence(
  rows: readonly ObservedGap[],
  options: { readonly perDays?: number; readonly level?: number } = {},
): CasePersistence {
  const level = requireLevel(options.level ?? 0.95);
  requireRows(rows);
  const known = rows.filter(({ event }) => event !== null).map((row) => ({ ...row, event: requireFinding("event", row.event) }));
  if (known.length === 0) throw new EstimateError("empty", "No case was looked at again.", "Give at least one gap.");
  const still = known.filter(({ event }) => !event).length;
  const counts = { cases: still, n: known.length, missing: rows.length - known.length };
  const clustered = known.every(({ cluster }) => cluster !== undefined);
  const clusters = clustered ? [...grouped(known, ({ cluster }) => cluster!).values()] : null;
  const gapDays = describe(known.map(({ days }) => days));
  const clearing = intervalCensoredIncidence(rows, options);
  if (clusters === null) {
    const { estimate, lower, upper, method } = wilsonInterval(still, known.length, { level });
    const note = "Gaps count as independent of each other; feet of one horse are not.";
    return { share: { ...counts, estimate, lower, upper, level, clusters: null, method, note }, gapDays, clearing };
  }
  const { estimate, logitT, se, method, note } = clusteredProportion(
    clusters.map((gaps) => ({ cases: gaps.filter(({ event }) => !event).length, n: gaps.length })),
    { level },
  );
  const how = se === null ? method : `Logit limits with Student's t, ${clusters.length} clusters`;
  return {
    share: { ...counts, estimate, ...logitT, level, clusters: clusters.length, method: how, note: se === null ? note : null },
    gapDays,
    clearing,
  };
}
