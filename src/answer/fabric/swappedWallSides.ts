import { fabricIssue } from "./fabricIssue.js";
import type { FootSet, StandingFoot } from "../../derive/fabric/FootSet.js";
import { footSets } from "../../derive/fabric/footSets.js";
import { hoofShape } from "../../derive/hoofShape.js";
import { flipEvidence } from "../../estimate/swap/flipEvidence.js";
import { flipInflation } from "../../estimate/swap/flipInflation.js";
import type { Prediction } from "../../estimate/swap/Prediction.js";
import { predictions } from "../../estimate/swap/predictions.js";
import { spreadOf } from "../../estimate/swap/spreadOf.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { FEWEST_DAYS } from "./swaps/pairEvidence.js";
import { signedMeasure } from "./swaps/signedMeasure.js";
import { swapLimit } from "./swaps/swapLimit.js";
import { LEFT_WITHOUT_BEST, withoutBest } from "./swaps/withoutBest.js";

const feet = ["LF", "RF", "LH", "RH"] as const satisfies readonly StandingFoot[];
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
export function swappedWallSides({ visits }: Pick<Study, "visits">, sets: readonly FootSet[] = footSets(visits)): Issue[] {
  const occasions = [...grouped(sets, ({ horseId }) => horseId).values()].map((ofHorse) =>
    ofHorse.flatMap((set) => {
      const values = differences(set);
      return values.every((value) => value === null) ? [] : [{ set, day: set.visitDate, values }];
    }),
  );
  const spreads = feet.map((_, place) => spreadOf(occasions, place, { least: ROUNDING }));
  const readings = occasions.flatMap((ofHorse) => {
    const expected = predictions(ofHorse, spreads, FEWEST_DAYS);
    return ofHorse.map(({ set, values }, place) => {
      const of = expected[place] ?? [];
      return { set, values, expected: of, ...flipEvidence(values, of) };
    });
  });
  const inflation = flipInflation(readings);
  const judged = readings.filter(({ information }) => information > 0).length;
  const limit = swapLimit(judged);
  return readings.flatMap(({ set, values, expected, parts }) => {
    const told = parts.filter((_, place) => (values[place] ?? null) !== null && (expected[place] ?? null) !== null);
    const { gap, rest } = withoutBest(told.map((part) => part / inflation));
    const all = told.length >= FEWEST_FEET && told.every((part) => part > 0);
    return all && gap >= limit && rest >= LEFT_WITHOUT_BEST ? [issueOf(set, values, expected, gap, limit, judged)] : [];
  });
}

function differences({ rows }: FootSet): (number | null)[] {
  return feet.map((foot) => {
    const row = rows[foot];
    return row === undefined ? null : hoofShape(row).wallAngleDifferenceDeg;
  });
}

function issueOf(
  set: FootSet,
  values: readonly (number | null)[],
  expected: readonly Prediction[],
  gap: number,
  limit: number,
  judged: number,
): Issue {
  const rows = feet.flatMap((foot) => set.rows[foot] ?? []);
  const lines = rows.map(({ line }) => line).sort((a, b) => a - b);
  const told = feet.flatMap((foot, place) => {
    const [value, usual] = [values[place] ?? null, expected[place] ?? null];
    if (value === null || usual === null) return [];
    return [`${foot} ${signedMeasure(value, "deg")} here and ${signedMeasure(usual.history, "deg")} on ${usual.days} other days`];
  });
  return fabricIssue({
    file: rows[0]?.file ?? "visits.csv",
    line: lines[0] ?? null,
    column: "medial_wall_angle_deg",
    code: "wall_sides_swapped",
    found:
      `medial and lateral of ${set.horseId} on ${set.visitDate} were probably exchanged: lateral less medial wall angle is ` +
      `${told.join(", ")}; the log-likelihood is better by ${gap.toFixed(1)} the other way round, where ${limit.toFixed(1)} is asked ` +
      `of ${judged} sets`,
    hint:
      "See from which end the feet were looked at or photographed that day; if it is so, exchange medial and lateral, " +
      `also of cleft and flare, in lines ${lines.join(", ")}.`,
  });
}
