import type { Issue } from "../../study/Issue.js";
import type { Source } from "../../study/Source.js";
import type { Study } from "../../study/Study.js";
import { placedSentence } from "../report/placedSentence.js";
import { quoted } from "../report/quoted.js";
import type { NonEquineDay } from "./NonEquineDay.js";
import { nonEquineDays } from "./nonEquineDays.js";
import { withoutRows } from "./withoutRows.js";

/**
 * The study without the rows that are not a horse's feet (`nonEquineDays`), which must not enter any figure: rows of visits and outlines
 * of those days, and the animal itself in horses.csv when none of its days is left. Each row is set aside with its reason, and nothing is
 * rescaled. A second call changes nothing.
 */
export function withoutOtherAnimals(study: Study): Study {
  const days = nonEquineDays(study);
  if (days.length === 0) return study;
  const ofDay = new Map(days.map((day) => [`${day.horseId}\n${day.visitDate}`, day]));
  const left = new Set(
    study.visits.filter(({ horseId, visitDate }) => !ofDay.has(`${horseId}\n${visitDate}`)).map(({ horseId }) => horseId),
  );
  const ofAnimal = new Map(days.filter(({ horseId }) => !left.has(horseId)).map((day) => [day.horseId, day]));
  const reasons = new Map<Source, NonEquineDay>(days.flatMap((day) => day.rows.map((row) => [row, day] as const)));
  const add = (row: Source, day: NonEquineDay | undefined) => {
    if (day !== undefined) reasons.set(row, day);
  };
  for (const row of study.horses) add(row, ofAnimal.get(row.horseId));
  for (const row of study.outlines) add(row, ofDay.get(`${row.horseId}\n${row.visitDate}`) ?? ofAnimal.get(row.horseId));
  return withoutRows(study, reasons, [...reasons].map(issueOf));
}

function issueOf([{ file, line }, { horseId, visitDate, signs }]: readonly [Source, NonEquineDay]): Issue {
  const place = { file, line, column: null };
  return {
    ...place,
    row: null,
    value: null,
    code: "not_equine_by_signs",
    severity: "set_aside",
    message: placedSentence(place, `${quoted(horseId)} on ${visitDate} does not look like a horse: ${signs.join("; ")}`),
    hint: "Only feet of horses, ponies, donkeys and mules are described by these records; if it is one, correct the cells named.",
  };
}
