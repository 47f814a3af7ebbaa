import type { Study } from "../../study/Study.js";
import { counted } from "../words/counted.js";
import { type Adjusted, adjustedModel } from "./adjustedModel.js";
import type { ClimateRow } from "./ClimateRow.js";
import { climateRows } from "./climateRows.js";
import { exposureWords } from "./exposureWords.js";
import { fewestMonths } from "./fewestMonths.js";
import { valueOf } from "./valueOf.js";

/** The declared analysis of a study. */
export interface Declared extends Adjusted {
  readonly rows: readonly ClimateRow[];
}

/** The declared analysis as a model, or why these records cannot carry it. */
export function declaredModel(study: Study): Declared | string {
  const rows = climateRows(study);
  const lack = lacking(study, rows);
  if (lack !== null) return lack;
  return { rows, ...adjustedModel(study.settings, rows, study.settings.adjustFor) };
}

function lacking(study: Study, rows: readonly ClimateRow[]): string | null {
  const { primaryExposure, minimumHorses, caseGrade } = study.settings;
  const graded = rows.filter((row) => row.case !== null);
  if (graded.length === 0) return "No frog is graded.";
  const horses = new Set(graded.map(({ horseId }) => horseId)).size;
  if (horses < minimumHorses) return `${counted(horses, "horse has", "horses have")} a graded frog; ${minimumHorses} are needed.`;
  const cases = graded.filter((row) => row.case === true).length;
  if (cases === 0)
    return `None of the ${graded.length} feet graded is a case (grade ${caseGrade} or more), so nothing can go with more or fewer of them.`;
  if (cases === graded.length)
    return `All ${graded.length} feet graded are cases (grade ${caseGrade} or more), so nothing can go with more or fewer of them.`;
  if (study.weather.length === 0) return "There are no rain readings.";
  const linked = graded.filter((row) => valueOf(row, primaryExposure) !== null);
  if (linked.length === 0) return `No graded foot has its ${exposureWords(primaryExposure)}.`;
  const yards = new Set(linked.flatMap(({ yardId }) => yardId ?? [])).size;
  if (yards < 2)
    return `All horses whose rain is known stand at ${counted(yards, "yard")}: what goes with its wet days cannot be told from what else went on there.`;
  const months = new Set(linked.map(({ monthOfYear }) => monthOfYear)).size;
  if (months >= fewestMonths) return null;
  return `Visits with known rain lie in ${counted(months, "month")} of the year; season can be told from rain with ${fewestMonths} or more.`;
}
