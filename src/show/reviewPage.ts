import type { Review } from "../answer/Review.js";
import { counted } from "../answer/words/counted.js";
import { longDate } from "../answer/words/longDate.js";
import { version } from "../study/version.js";
import type { Page } from "./Page.js";

/** A season's review as a page: what can be answered in its order, then what cannot. `on` is the day it is made, `YYYY-MM-DD`. */
export function reviewPage(review: Review, on: string): Page {
  const { name, from, to, asOf, answers, unanswered, cautions, settings, report } = review;
  return {
    title: `${name}: a season's review`,
    intro: [
      from === null || to === null || asOf === null
        ? "No visit has been recorded yet."
        : `Visits from ${longDate(from)} to ${longDate(to)}, looked at as of ${longDate(asOf)}.`,
      ...(unanswered.length === 0
        ? []
        : [`${counted(unanswered.length, "question")} could not be answered from these records; the reasons stand at the end.`]),
    ],
    cautions,
    answers: [...answers, ...unanswered],
    report,
    made: { on, study: name, program: `underfoot ${version}`, settings },
  };
}
