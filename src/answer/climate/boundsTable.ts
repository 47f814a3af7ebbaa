import type { Table } from "../../chart/Table.js";
import { describe } from "../../estimate/describe.js";
import { missingBounds } from "../../estimate/missingBounds.js";
import { type Declared } from "./declaredModel.js";
import { fewestYards } from "./fewestYards.js";
import { valueOf } from "./valueOf.js";

/** Prevalence, and its difference above and below the median exposure, whatever the feet without a grade are. */
export function boundsTable({ rows, model }: Declared, level: number): Table[] {
  const cut = describe(rows.map((row) => valueOf(row, model.exposure) as number | null)).median;
  const yards = new Set(rows.map(({ yardId }) => yardId)).size;
  const { prevalence, difference } = missingBounds(
    rows.map((row) => {
      const amount = valueOf(row, model.exposure) as number | null;
      return {
        case: row.case,
        exposed: amount === null ? null : amount > cut,
        cluster: yards < fewestYards ? row.horseId : (row.yardId ?? row.horseId),
      };
    }),
    { level },
  );
  const parts = [
    { what: "Prevalence per foot at a visit", ...prevalence },
    ...(difference === null
      ? []
      : [{ what: `Difference of prevalence, exposure above ${cut.toFixed(0)} against the rest (crude)`, ...difference }]),
  ];
  return [
    {
      caption: "Complete feet, and bounds whatever the feet without a grade are",
      columns: [
        { name: "what", title: "What" },
        { name: "observed", title: "Graded feet", percent: true, digits: 1 },
        { name: "lowest", title: "Lowest it could be", percent: true, digits: 1 },
        { name: "highest", title: "Highest", percent: true, digits: 1 },
        { name: "lower", title: "With chance, from", percent: true, digits: 1 },
        { name: "upper", title: "to", percent: true, digits: 1 },
        { name: "n", title: "Feet graded" },
        { name: "missing", title: "Missing" },
      ],
      rows: parts.map(({ what, observed, lowest, highest, lower, upper, n, missing }) => ({
        what,
        observed,
        lowest,
        highest,
        lower,
        upper,
        n,
        missing,
      })),
    },
  ];
}
