import { clusteredProportion } from "./clusteredProportion.js";
import { requireCount } from "./numeric/requireCount.js";
import { requireLevel } from "./numeric/requireLevel.js";
import type { PrevalenceEstimate, PrevalenceUnit } from "./PrevalenceEstimate.js";
import type { PrevalenceRow } from "./PrevalenceRow.js";
import { wilsonInterval } from "./wilsonInterval.js";

/** Prevalence of one finding counted in every unit. */
export interface Prevalence {
  readonly footVisit: PrevalenceEstimate;
  /** Null when no row carries a visit date. */
  readonly visit: PrevalenceEstimate | null;
  readonly horse: PrevalenceEstimate;
  readonly yard: PrevalenceEstimate;
}

/**
 * Prevalence of a finding per foot-visit, per visit, per horse and per yard, with limits that allow for feet of one horse and
 * horses of one yard being alike.
 *
 * Method: a visit, horse or yard is a case when any of its rows is one, and clear when none is and at least one is known. With
 * `minimumYards` yards or more (10 unless given), foot-visits, visits and horses are clustered by yard, the level at which
 * everything below is alike; a row of unknown yard then clusters with the other rows of its horse, and a horse seen in several
 * yards counts in the one that holds most of its rows. With fewer yards, a spread between yards cannot be measured: foot-visits
 * and visits are clustered by horse, horses count as independent, and `note` says that the limits hold for these yards only.
 * Clustered limits are the logit-t ones of `clusteredProportion`, independent ones Wilson's; yards always are independent. The
 * number 10 is a convention of this project; below it the between-yard variance is too rough.
 *
 * Missing: a unit none of whose rows is known counts in `missing`; a clear unit with rows that are not known counts as clear and
 * in `partlyKnown`, so that prevalence per horse or yard is a lower bound then. Rows of unknown yard belong to no yard. Where
 * nothing is known the estimate is null and `note` says so.
 *
 * Errors: `not_a_count` for `minimumYards`; `out_of_range` for a level not between 0 and 1.
 *
 * Source: as `clusteredProportion` and `wilsonInterval`.
 */
export function prevalence(
  rows: readonly PrevalenceRow[],
  options: { readonly level?: number; readonly minimumYards?: number } = {},
): Prevalence {
  const level = requireLevel(options.level ?? 0.95);
  const minimumYards = requireCount("minimum number of yards", options.minimumYards ?? 10);
  const known = new Set(rows.filter((row) => row.case !== null && row.yardId !== null).map((row) => row.yardId));
  const byYard = known.size >= Math.max(2, minimumYards);
  const few = byYard ? null : fewYards(known.size);
  const clustered = (unit: PrevalenceUnit, units: readonly Unit[]): PrevalenceEstimate => {
    if (!byYard && unit === "horse") return independent(unit, units, level, few);
    return withClusters(unit, units, byYard ? "yard" : "horse", level, few);
  };
  const dated = rows.filter((row) => row.visitDate !== undefined);
  const withYard = rows.filter((row) => row.yardId !== null);
  const strays = rows.length - withYard.length;
  return {
    footVisit: clustered(
      "foot-visit",
      unitsOf(rows, (_, i) => String(i)),
    ),
    visit:
      dated.length === 0
        ? null
        : clustered(
            "visit",
            unitsOf(dated, (row) => `${row.visitDate ?? ""} ${row.horseId}`),
          ),
    horse: clustered(
      "horse",
      unitsOf(rows, (row) => row.horseId),
    ),
    yard: independent(
      "yard",
      unitsOf(withYard, (row) => row.yardId ?? ""),
      level,
      strays > 0 ? `${strays} rows belong to no known yard.` : null,
    ),
  };
}

/** Rows that count as one. */
interface Unit {
  readonly case: boolean | null;
  readonly partlyKnown: boolean;
  readonly horseId: string;
  readonly yardId: string | null;
}

function unitsOf(rows: readonly PrevalenceRow[], keyOf: (row: PrevalenceRow, index: number) => string): Unit[] {
  const groups = new Map<string, PrevalenceRow[]>();
  rows.forEach((row, i) => {
    const key = keyOf(row, i);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  });
  return [...groups.values()].map((group) => {
    const known = group.filter((row) => row.case !== null);
    const found = known.some((row) => row.case === true);
    return {
      case: known.length === 0 ? null : found,
      partlyKnown: known.length > 0 && !found && known.length < group.length,
      horseId: group[0]?.horseId ?? "",
      yardId: mainYard(group),
    };
  });
}

/** The yard that holds most of the rows; among equals the first by name. */
function mainYard(rows: readonly PrevalenceRow[]): string | null {
  const counts = new Map<string, number>();
  for (const { yardId } of rows) if (yardId !== null) counts.set(yardId, (counts.get(yardId) ?? 0) + 1);
  const ranked = [...counts].sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1));
  return ranked[0]?.[0] ?? null;
}

function counted(unit: PrevalenceUnit, units: readonly Unit[], level: number) {
  const known = units.filter((one) => one.case !== null);
  return {
    unit,
    level,
    cases: known.filter((one) => one.case === true).length,
    n: known.length,
    missing: units.length - known.length,
    partlyKnown: units.filter((one) => one.partlyKnown).length,
  };
}

function independent(unit: PrevalenceUnit, units: readonly Unit[], level: number, note: string | null): PrevalenceEstimate {
  const counts = counted(unit, units, level);
  if (counts.n === 0) return nothingKnown(counts);
  const { estimate, lower, upper, method } = wilsonInterval(counts.cases, counts.n, { level });
  const alone = { clusteredBy: null, clusters: counts.n, designEffect: null, icc: null, effectiveN: counts.n };
  return { ...counts, estimate, lower, upper, ...alone, method: `Share of ${unit}s, ${method}`, note };
}

function withClusters(
  unit: PrevalenceUnit,
  units: readonly Unit[],
  by: "horse" | "yard",
  level: number,
  note: string | null,
): PrevalenceEstimate {
  const counts = counted(unit, units, level);
  if (counts.n === 0) return nothingKnown(counts);
  const clusters = new Map<string, { cases: number; n: number }>();
  for (const { case: found, horseId, yardId } of units) {
    if (found === null) continue;
    const key = by === "yard" && yardId !== null ? `yard ${yardId}` : `horse ${horseId}`;
    const cluster = clusters.get(key) ?? { cases: 0, n: 0 };
    clusters.set(key, { cases: cluster.cases + Number(found), n: cluster.n + 1 });
  }
  const result = clusteredProportion([...clusters.values()], { level });
  const method = result.se === null ? result.method : `logit limits with Student's t, ${result.clusters} clusters (${by}s)`;
  return {
    ...counts,
    estimate: result.estimate,
    ...result.logitT,
    clusteredBy: by,
    clusters: result.clusters,
    designEffect: result.designEffect,
    icc: result.icc,
    effectiveN: result.effectiveN,
    method: `Share of ${unit}s, ${method}`,
    note: [result.se === null ? result.note : null, note].filter((text) => text !== null).join(" ") || null,
  };
}

function nothingKnown(counts: ReturnType<typeof counted>): PrevalenceEstimate {
  return {
    ...counts,
    estimate: null,
    lower: null,
    upper: null,
    clusteredBy: null,
    clusters: 0,
    designEffect: null,
    icc: null,
    effectiveN: null,
    method: `Share of ${counts.unit}s`,
    note: `The finding is not known for any ${counts.unit}.`,
  };
}

function fewYards(yards: number): string {
  if (yards === 0) return "No yard is known, so the limits take horses as independent of each other.";
  return yards === 1
    ? "There is one yard: the limits hold for it alone."
    : `${yards} yards are too few to measure how yards differ: the limits hold for these yards only.`;
}
