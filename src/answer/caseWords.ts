import type { Settings } from "../study/Settings.js";

/** The case definition in use, in words: `grade 1 or more on the project scale`. Said beside every figure that rests on it. @private */
export function caseWords(settings: Pick<Settings, "caseGrade">): string {
  return settings.caseGrade === 3 ? "grade 3 on the project scale" : `grade ${settings.caseGrade} or more on the project scale`;
}
