import type { ClassificationTable } from "../ClassificationTable.js";
import { clusteredProportion } from "../clusteredProportion.js";
import type { Interval } from "../Interval.js";
import { wilsonInterval } from "../wilsonInterval.js";

/** Counts right and wrong predictions, classes as indices. Without `groups` every row stands for itself. */
export function tabulated(
  classes: readonly string[],
  truth: Int32Array,
  predicted: Int32Array,
  { groups, level, method }: { groups: { index: Int32Array; count: number } | null; level: number; method: string },
): ClassificationTable {
  const confusion = classes.map(() => classes.map(() => 0));
  const clusters = Array.from({ length: groups?.count ?? 0 }, () => ({ cases: 0, n: 0 }));
  let errors = 0;
  truth.forEach((actual, i) => {
    const said = predicted[i]!;
    confusion[actual]![said]! += 1;
    const wrong = actual === said ? 0 : 1;
    errors += wrong;
    const cluster = groups === null ? undefined : clusters[groups.index[i]!];
    if (cluster === undefined) return;
    cluster.cases += wrong;
    cluster.n += 1;
  });
  const errorRate = groups === null ? wilsonInterval(errors, truth.length, { level }) : clustered(clusters, level);
  return { classes, confusion, errors, n: truth.length, errorRate, method };
}

function clustered(clusters: readonly { cases: number; n: number }[], level: number): Interval {
  const { estimate, lower, upper, method, note } = clusteredProportion(clusters, { level });
  return { estimate, lower, upper, level, method, note };
}
