import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import type { PlantedEffects } from "./plantedEffects.js";
import { rounded } from "./rounded.js";
import type { VisitCells } from "./VisitCells.js";

/** One look at a frog. */
export interface ThrushLook {
  readonly grade: number;
  readonly cells: VisitCells;
  /** The grade another observer gives the same frog. */
  readonly gradeBy: (observerEffect: number) => number;
}

/**
 * A look at a frog whose log odds of grade 1 or more are given, the observer not counted.
 *
 * Method: proportional odds. A logistic deviate is added to the log odds and the sum cut at 0 and at the grade steps. Another observer sees the
 * same sum, with an error of his own (SD 0.7).
 */
export function thrushLook(
  logOdds: number,
  observerEffect: number,
  steps: PlantedEffects["gradeSteps"],
  random: RandomSource,
): ThrushLook {
  const chance = random.uniform();
  const seen = logOdds + Math.log(chance / (1 - chance));
  const otherEye = random.normal(0, 0.7);
  const gradeOf = (sum: number) => [0, ...steps].filter((cut) => rounded(sum, 6) > cut).length;
  const grade = gradeOf(seen + observerEffect);
  return { grade, cells: cellsOf(grade, random), gradeBy: (effect) => gradeOf(seen + effect + otherEye) };
}

function cellsOf(grade: number, random: RandomSource): VisitCells {
  const depth = random.normal([6, 8, 13, 18][grade], [1.6, 1.8, 2.6, 3.2][grade]);
  const [central, both, medial] = [random.bernoulli(0.68), random.bernoulli(0.45), random.bernoulli(0.5)];
  const groove = medial ? "medial_groove" : "lateral_groove";
  const site = central ? (grade >= 2 && both ? `central_sulcus;${groove}` : "central_sulcus") : groove;
  return {
    thrush_grade: grade,
    ...(grade === 0 ? {} : { thrush_site: site }),
    ...(random.bernoulli(0.7) ? { cleft_depth_mm: Math.max(1, rounded(depth)) } : {}),
  };
}
