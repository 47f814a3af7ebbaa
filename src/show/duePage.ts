import { dueAndOver } from "../answer/dueAndOver.js";
import { forTheVet } from "../answer/forTheVet.js";
import { generalCautions } from "../answer/generalCautions.js";
import { longDate } from "../answer/words/longDate.js";
import { asOfDate } from "../derive/asOfDate.js";
import { dueDates } from "../derive/dueDates.js";
import type { Study } from "../study/Study.js";
import { version } from "../study/version.js";
import type { Page } from "./Page.js";

/** Who is due and who is over, as a page; feet of listed horses that are the vet's come first. `on` is the day it is made, `YYYY-MM-DD`. */
export function duePage(study: Study, on: string): Page {
  const asOf = asOfDate(study);
  const listed = new Set(dueDates(study).map(({ horseId }) => horseId));
  const visits = study.visits.filter(({ horseId, visitDate }) => listed.has(horseId) && visitDate <= (asOf ?? ""));
  return {
    title: asOf === null ? "Who is due" : `Who is due: ${longDate(asOf)}`,
    intro: ["The horses that are there on that day, each with the date of its next routine visit."],
    cautions: generalCautions.slice(0, 3),
    answers: [forTheVet({ ...study, visits }), dueAndOver(study)],
    report: null,
    made: { on, study: study.name, program: `underfoot ${version}`, settings: study.settings },
    settings: ["toleranceDays", "lostAfterDays", "asOf"],
    compact: true,
  };
}
