import { badVisitsRunning } from "../answer/badVisitsRunning.js";
import { dueAndOver } from "../answer/dueAndOver.js";
import { forTheVet } from "../answer/forTheVet.js";
import { generalCautions } from "../answer/generalCautions.js";
import { horsesToWatch } from "../answer/horsesToWatch.js";
import { keepingTheInterval } from "../answer/keepingTheInterval.js";
import { newAndStandingThrush } from "../answer/newAndStandingThrush.js";
import { sinceLastYear } from "../answer/sinceLastYear.js";
import { thrushByMonth } from "../answer/thrushByMonth.js";
import { thrushNow } from "../answer/thrushNow.js";
import { counted } from "../answer/words/counted.js";
import { longDate } from "../answer/words/longDate.js";
import { yardHorses } from "../answer/yardHorses.js";
import type { Study } from "../study/Study.js";
import { version } from "../study/version.js";
import type { Page } from "./Page.js";

const asked = [
  forTheVet,
  dueAndOver,
  yardHorses,
  badVisitsRunning,
  thrushNow,
  sinceLastYear,
  newAndStandingThrush,
  thrushByMonth,
  horsesToWatch,
  keepingTheInterval,
];

/**
 * What the manager of one yard is handed, of a study cut to that yard (`focusOn`): what is the vet's, who is due, each horse, thrush, the
 * diary. Neither the study nor its files are named, since their names may name other yards. `on` is the day it is made, `YYYY-MM-DD`.
 */
export function yardPage(study: Study, yardId: string, on: string): Page {
  const days = study.visits.map(({ visitDate }) => visitDate).sort();
  const [first, last] = [days[0], days.at(-1)];
  const replies = asked.map((ask) => ask(study));
  const unanswered = replies.filter(({ kind }) => kind === "not_enough_data");
  return {
    title: `${yardId}: feet and dates`,
    intro: [
      first === undefined || last === undefined
        ? "No visit to this yard has been recorded yet."
        : `Visits to this yard from ${longDate(first)} to ${longDate(last)}. Of a horse that came or left, only what was recorded here is used.`,
      ...(unanswered.length === 0
        ? []
        : [`${counted(unanswered.length, "question")} could not be answered from these records; the reasons stand at the end.`]),
    ],
    cautions: generalCautions,
    answers: [...replies.filter(({ kind }) => kind === "answer"), ...unanswered],
    report: null,
    made: { on, study: yardId, program: `underfoot ${version}`, settings: study.settings },
    settings: ["caseGrade", "level", "toleranceDays", "lostAfterDays", "minimumHorses", "gaugeDay", "asOf"],
  };
}
