import { grouped } from "../study/grouped.js";
import { clusterJackknife } from "./climate/clusterJackknife.js";
import { clusteredProportion } from "./clusteredProportion.js";
import { requireRows } from "./design/requireRows.js";
import { EstimateError } from "./EstimateError.js";
import { requireFinding } from "./numeric/requireFinding.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { tQuantile } from "./numeric/tQuantile.js";

/** One foot at one visit that should have been seen. */
export interface BoundedRow {
  /** Null when it was not seen or not graded. */
  readonly case: boolean | null;
  /** Null when the exposure is not known; left out for a prevalence alone. */
  readonly exposed?: boolean | null;
  /** What hangs together: the yard. */
  readonly cluster: string;
}

/** What a number could be, whatever the missing outcomes are. */
export interface MissingBounds {
  /** From the rows that are known. */
  readonly observed: number | null;
  /** Every missing outcome turned the one way, and the other way. */
  readonly lowest: number;
  readonly highest: number;
  /** Lower limit of the lowest and upper limit of the highest: chance and missing outcomes together. Null when there are none. */
  readonly lower: number | null;
  readonly upper: number | null;
  readonly level: number;
  readonly n: number;
  readonly missing: number;
  readonly clusters: number;
  readonly method: string;
  readonly note: string | null;
}

/** Bounds of a prevalence and of a difference of two. */
export interface MissingOutcomes {
  readonly prevalence: MissingBounds;
  /** Prevalence among the exposed minus that among the unexposed; null without exposed or unexposed rows. */
  readonly difference: MissingBounds | null;
  /** Rows with an exposure that is not known: in the prevalence, not in the difference. */
  readonly exposureMissing: number;
}

/**
 * Worst and best case for outcomes that are missing: bounds that need no guess at why they are. They are wide, and that is what is known.
 *
 * Method: lowest prevalence with every missing foot clear, highest with every one a case. Lowest difference with the missing exposed clear and the
 * missing unexposed cases, highest the other way round. Limits: those of `clusteredProportion` (logit-t), for the difference a delete-one-cluster jackknife
 * with t on clusters - 1 degrees of freedom, cut at -1 and 1; together they hold all of what the number could be at least as often as the level says.
 *
 * Errors: `empty` for no rows; `out_of_range` for a case or an exposure that is neither yes nor no, or the level; `not_a_number`.
 *
 * Source: Horowitz JL, Manski CF (2000) J Am Stat Assoc 95:77-84.
 */
export function missingBounds(rows: readonly BoundedRow[], options: { readonly level?: number } = {}): MissingOutcomes {
  const level = requireLevel(options.level ?? 0.95);
  requireRows(rows);
  if (rows.length === 0)
    throw new EstimateError("empty", "There are no rows.", "Give a row for each foot that should have been seen.");
  const clusters = [...grouped(rows.map(checked), ({ cluster }) => cluster).values()].map(countsOf);
  const placed = clusters.filter(({ exposed, unexposed }) => rowsIn(exposed) + rowsIn(unexposed) > 0);
  const both = [placed.some(({ exposed }) => rowsIn(exposed) > 0), placed.some(({ unexposed }) => rowsIn(unexposed) > 0)];
  return {
    prevalence: prevalenceBounds(
      clusters.map(({ all }) => all),
      level,
    ),
    difference: both.every(Boolean) ? differenceBounds(placed, level) : null,
    exposureMissing: rows.filter(({ exposed }) => exposed === null || exposed === undefined).length,
  };
}

function checked(row: BoundedRow): BoundedRow {
  const known = (name: string, value: boolean | null | undefined) =>
    value === null || value === undefined ? null : requireFinding(name, value);
  return { cluster: row.cluster, case: known("case", row.case), exposed: known("exposed", row.exposed) };
}

interface Counts {
  readonly cases: number;
  readonly clear: number;
  readonly missing: number;
}

type Cluster = Readonly<Record<"all" | "exposed" | "unexposed", Counts>>;

function countsOf(rows: readonly BoundedRow[]): Cluster {
  const counts = (chosen: readonly BoundedRow[]): Counts => ({
    cases: chosen.filter((row) => row.case === true).length,
    clear: chosen.filter((row) => row.case === false).length,
    missing: chosen.filter((row) => row.case === null).length,
  });
  return {
    all: counts(rows),
    exposed: counts(rows.filter(({ exposed }) => exposed === true)),
    unexposed: counts(rows.filter(({ exposed }) => exposed === false)),
  };
}

function rowsIn({ cases, clear, missing }: Counts): number {
  return cases + clear + missing;
}

function added(list: readonly Counts[]): Counts {
  const sum = (name: keyof Counts) => list.reduce((all, counts) => all + counts[name], 0);
  return { cases: sum("cases"), clear: sum("clear"), missing: sum("missing") };
}

/** Share of cases with the missing counted as cases or as clear; null for no rows. */
function share(counts: Counts, missingAreCases: boolean): number | null {
  const n = rowsIn(counts);
  return n === 0 ? null : (counts.cases + (missingAreCases ? counts.missing : 0)) / n;
}

function prevalenceBounds(clusters: readonly Counts[], level: number): MissingBounds {
  const all = added(clusters);
  const known = all.cases + all.clear;
  const limits = (missingAreCases: boolean) =>
    clusteredProportion(
      clusters.map((counts) => ({ cases: counts.cases + (missingAreCases ? counts.missing : 0), n: rowsIn(counts) })),
      { level },
    );
  const [low, high] = [limits(false), limits(true)];
  return {
    observed: known === 0 ? null : all.cases / known,
    lowest: low.estimate,
    highest: high.estimate,
    lower: low.logitT.lower,
    upper: high.logitT.upper,
    level,
    n: known,
    missing: all.missing,
    clusters: clusters.length,
    method: `Bounds of the prevalence over all values of missing outcomes; logit limits with Student's t, ${clusters.length} clusters`,
    note: low.note,
  };
}

function differenceBounds(clusters: readonly Cluster[], level: number): MissingBounds {
  const k = clusters.length;
  const gap = (missingExposedAreCases: boolean) => (list: readonly Cluster[]) => {
    const exposed = share(added(list.map((cluster) => cluster.exposed)), missingExposedAreCases);
    const unexposed = share(added(list.map((cluster) => cluster.unexposed)), !missingExposedAreCases);
    return exposed === null || unexposed === null ? null : exposed - unexposed;
  };
  const [exposed, unexposed] = [added(clusters.map((one) => one.exposed)), added(clusters.map((one) => one.unexposed))];
  const [seen, unseen] = [exposed.cases + exposed.clear, unexposed.cases + unexposed.clear];
  const [low, high] = [clusterJackknife(clusters, gap(false))!, clusterJackknife(clusters, gap(true))!];
  const t = k > 1 ? tQuantile((1 + level) / 2, k - 1) : NaN;
  const limited = low.se !== null && high.se !== null;
  return {
    observed: seen === 0 || unseen === 0 ? null : exposed.cases / seen - unexposed.cases / unseen,
    lowest: low.estimate,
    highest: high.estimate,
    lower: limited ? Math.max(-1, low.estimate - t * low.se) : null,
    upper: limited ? Math.min(1, high.estimate + t * high.se) : null,
    level,
    n: seen + unseen,
    missing: exposed.missing + unexposed.missing,
    clusters: k,
    method: `Bounds of the difference in prevalence over all values of missing outcomes; jackknife over ${k} clusters, t with ${k - 1} degrees of freedom`,
    note: limited ? null : "Too few clusters hold both exposed and unexposed rows for limits.",
  };
}
