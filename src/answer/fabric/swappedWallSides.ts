import { fabricMeasures } from "../../derive/fabric/fabricMeasures.js";
import type { FootTable } from "../../derive/fabric/FootTable.js";
import { standingFeet } from "../../derive/fabric/standingFeet.js";
import { tableOfFeet } from "../../derive/fabric/tableOfFeet.js";
import { flipInflation } from "../../estimate/fabric/flipInflation.js";
import { flipPart } from "../../estimate/fabric/flipPart.js";
import { fromOtherDays } from "../../estimate/fabric/fromOtherDays.js";
import { historyOf } from "../../estimate/fabric/historyOf.js";
import type { Readings } from "../../estimate/fabric/Readings.js";
import { signFlips } from "../../estimate/fabric/signFlips.js";
import { spreadOf } from "../../estimate/fabric/spreadOf.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { fabricIssue } from "./fabricIssue.js";
import { fewestDays } from "./swaps/fewestDays.js";
import { leftWithoutBest } from "./swaps/leftWithoutBest.js";
import { signedMeasure } from "./swaps/signedMeasure.js";
import { swapLimit } from "./swaps/swapLimit.js";

/** One foot may flare on the other side; that all do is the writer. */
const FEWEST_FEET = 3;
/** Variance of the difference of two angles read to half a degree. */
const ROUNDING = (2 * 0.5 ** 2) / 12;

/**
 * Days on which the inner and outer wall angles of a horse were probably exchanged on all its feet, as when the feet were looked at, or
 * photographed, from the other end.
 *
 * Method: lateral less medial wall angle of each foot against the same foot on other days, as in `swappedLabels`; three feet or more must be
 * measured, and each of them must fit better with the sign changed.
 *
 * Missing: feet whose two walls are alike say nothing.
 *
 * Source: the inner wall mostly stands steeper (common practice, no source); the likelihood is own.
 */
export function swappedWallSides({ visits }: Pick<Study, "visits">, table: FootTable = tableOfFeet(visits)): Issue[] {
  const readings = wallDifferences(table);
  const spreads = standingFeet.map((_, column) => spreadOf(readings, column, { least: ROUNDING }));
  const { expected, variance } = fromOtherDays(readings, spreads, fewestDays);
  const flips = signFlips(readings, { expected, variance });
  const inflation = flipInflation(flips);
  const judged = flips.information.filter((information) => information > 0).length;
  const limit = swapLimit(judged);
  return table.sets.flatMap((set, place): Issue[] => {
    const [gap, best] = [(flips.gap[place] ?? 0) / inflation, (flips.best[place] ?? 0) / inflation];
    if (gap < limit || gap - best < leftWithoutBest) return [];
    const told = standingFeet.flatMap((foot, column) => {
      const at = place * readings.columns + column;
      const value = readings.values[at] ?? NaN;
      const part = flipPart(value, expected[at] ?? NaN, variance[at] ?? NaN);
      return Number.isNaN(part) ? [] : [{ foot, column, value, part }];
    });
    if (told.length < FEWEST_FEET || !told.every(({ part }) => part > 0)) return [];
    const rows = standingFeet.flatMap((foot) => set.rows[foot] ?? []);
    const lines = rows.map(({ line }) => line).sort((a, b) => a - b);
    const words = told.map(({ foot, column, value }) => {
      const { mean, days } = historyOf(readings, place, column);
      return `${foot} ${signedMeasure(value, "deg")} here and ${signedMeasure(mean, "deg")} on ${days} other days`;
    });
    return [
      fabricIssue({
        file: rows[0]?.file ?? "visits.csv",
        line: lines[0] ?? null,
        column: "medial_wall_angle_deg",
        code: "wall_sides_swapped",
        found:
          `medial and lateral of ${set.horseId} on ${set.visitDate} were probably exchanged: lateral less medial wall angle is ` +
          `${words.join(", ")}; the log-likelihood is better by ${gap.toFixed(1)} the other way round, where ${limit.toFixed(1)} is asked ` +
          `of ${judged} sets`,
        hint:
          "See from which end the feet were looked at or photographed that day; if it is so, exchange medial and lateral, " +
          `also of cleft and flare, in lines ${lines.join(", ")}.`,
      }),
    ];
  });
}

/** Lateral less medial wall angle, one column a foot. */
function wallDifferences({ values, starts, days }: FootTable): Readings {
  const columns = standingFeet.length;
  const [medial, lateral] = (["medialWallAngleDeg", "lateralWallAngleDeg"] as const).map((name) =>
    fabricMeasures.findIndex(({ field }) => field === name),
  );
  const differences = new Float64Array(days.length * columns).map((_, at) => {
    const from = at * fabricMeasures.length;
    return (values[from + (lateral ?? 0)] ?? NaN) - (values[from + (medial ?? 0)] ?? NaN);
  });
  return { columns, values: differences, starts, days };
}
