import { asOfDate } from "../derive/asOfDate.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { fabricChecked } from "./fabricChecked.js";
import { feetSeen } from "./feetSeen.js";
import { forTheVet } from "./forTheVet.js";
import { frontAndHind } from "./frontAndHind.js";
import { generalCautions } from "./generalCautions.js";
import { frontsGoingOdd } from "./frontsGoingOdd.js";
import { heelsRunningUnder } from "./heelsRunningUnder.js";
import { hindsOrFronts } from "./hindsOrFronts.js";
import { keepingTheInterval } from "./keepingTheInterval.js";
import { newAndStandingThrush } from "./newAndStandingThrush.js";
import { overTheDate } from "./overTheDate.js";
import type { Review } from "./Review.js";
import { shapeByInterval } from "./shapeByInterval.js";
import { shoesStayingOn } from "./shoesStayingOn.js";
import { thrushAfterRain } from "./thrushAfterRain.js";
import { thrushByMonth } from "./thrushByMonth.js";
import { thrushNow } from "./thrushNow.js";
import { toesBetweenVisits } from "./toesBetweenVisits.js";
import { yardsAndGround } from "./yardsAndGround.js";

/** What is asked in a season's review. Feet that are the vet's come first, whatever else there is to say. */
const asked: readonly ((study: Study) => Answer | NotEnoughData)[] = [
  forTheVet,
  overTheDate,
  thrushNow,
  newAndStandingThrush,
  hindsOrFronts,
  yardsAndGround,
  thrushByMonth,
  thrushAfterRain,
  keepingTheInterval,
  shapeByInterval,
  toesBetweenVisits,
  heelsRunningUnder,
  frontsGoingOdd,
  frontAndHind,
  shoesStayingOn,
  feetSeen,
];

/**
 * A season's review of a study: every question answered, or said why it cannot be.
 *
 * The whole way through the house can be read here: a study that was read, columns that are derived from it, numbers estimated from
 * those, charts of the numbers, and an answer in words for each question.
 */
export function seasonReview(study: Study): Review {
  const days = study.visits.map((visit) => visit.visitDate).sort();
  const replies = asked.map((ask) => ask(study));
  return {
    name: study.name,
    from: days[0] ?? null,
    to: days.at(-1) ?? null,
    asOf: asOfDate(study),
    answers: replies.filter((reply) => reply.kind === "answer"),
    unanswered: replies.filter((reply) => reply.kind === "not_enough_data"),
    cautions: generalCautions,
    settings: study.settings,
    report: fabricChecked(study).report,
  };
}
