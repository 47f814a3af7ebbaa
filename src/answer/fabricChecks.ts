import type { FootTable } from "../derive/fabric/FootTable.js";
import { tableOfFeet } from "../derive/fabric/tableOfFeet.js";
import type { Issue } from "../study/Issue.js";
import type { Study } from "../study/Study.js";
import { copiedRows } from "./fabric/copiedRows.js";
import { heapedDigits } from "./fabric/heapedDigits.js";
import { identicalGauges } from "./fabric/identicalGauges.js";
import { leftEqualsRight } from "./fabric/leftEqualsRight.js";
import { marksOutOfStep } from "./fabric/marksOutOfStep.js";
import { observerGradeShift } from "./fabric/observerGradeShift.js";
import { outlinesAgainstEnds } from "./fabric/outlinesAgainstEnds.js";
import { poundsForKilograms } from "./fabric/poundsForKilograms.js";
import { repeatedRows } from "./fabric/repeatedRows.js";
import { reversedEnds } from "./fabric/reversedEnds.js";
import { sameRowsTwoHorses } from "./fabric/sameRowsTwoHorses.js";
import { spelledTwoWays } from "./fabric/spelledTwoWays.js";
import { stuckGauges } from "./fabric/stuckGauges.js";
import { swappedHorses } from "./fabric/swappedHorses.js";
import { swappedLabels } from "./fabric/swappedLabels.js";
import { swappedWallSides } from "./fabric/swappedWallSides.js";
import { unitRuns } from "./fabric/unitRuns.js";
import { unvaryingGrades } from "./fabric/unvaryingGrades.js";
import { visitsWithoutRain } from "./fabric/visitsWithoutRain.js";

const checks: readonly ((study: Study, table: FootTable) => readonly Issue[])[] = [
  swappedLabels,
  outlinesAgainstEnds,
  swappedHorses,
  swappedWallSides,
  reversedEnds,
  marksOutOfStep,
  unitRuns,
  poundsForKilograms,
  heapedDigits,
  copiedRows,
  repeatedRows,
  leftEqualsRight,
  sameRowsTwoHorses,
  spelledTwoWays,
  unvaryingGrades,
  observerGradeShift,
  stuckGauges,
  identicalGauges,
  visitsWithoutRain,
];

/**
 * What a careful reader would doubt in a study that was read without a fault: labels that were probably exchanged, readings in other units,
 * rounded, copied, or written twice, observers that never vary or see otherwise, gauges that stand still. All are warnings: nothing is
 * changed. Each message holds the numbers it rests on; `fabricCodes` lists what can be said.
 *
 * Method: one function a check. Those that rest on probability share a chance of 5 % of any false doubt in a whole study (Bonferroni over the
 * checks, and within each over the sets, pairs, observers or measures that it compares); horses, not rows, are the units wherever readings of
 * one horse hang together. The others ask for fixed amounts that are common practice. Measured rates stand in docs/fabric.md.
 *
 * Missing: a check that has too little to go by says nothing, so silence proves nothing.
 */
export function fabricChecks(study: Study): readonly Issue[] {
  const table = tableOfFeet(study.visits);
  return checks.flatMap((check) => check(study, table));
}
