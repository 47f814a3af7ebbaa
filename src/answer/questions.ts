import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked, type QuestionId } from "./asked.js";
import { badVisitsRunning } from "./badVisitsRunning.js";
import { dueAndOver } from "./dueAndOver.js";
import { feetLongUnseen } from "./feetLongUnseen.js";
import { feetSeen } from "./feetSeen.js";
import { focusOn } from "./focusOn.js";
import { forTheVet } from "./forTheVet.js";
import { frontAndHind } from "./frontAndHind.js";
import { gapsAndGrades } from "./gapsAndGrades.js";
import { hindsOrFronts } from "./hindsOrFronts.js";
import { horseHistory } from "./horseHistory.js";
import { horsesToWatch } from "./horsesToWatch.js";
import { keepingTheInterval } from "./keepingTheInterval.js";
import { missingFeet } from "./missingFeet.js";
import { newAndStandingThrush } from "./newAndStandingThrush.js";
import { observersAgreeing } from "./observersAgreeing.js";
import { toesBetweenVisits } from "./toesBetweenVisits.js";
import { heelsRunningUnder } from "./heelsRunningUnder.js";
import { frontsGoingOdd } from "./frontsGoingOdd.js";
import { shapeByInterval } from "./shapeByInterval.js";
import { marksOnTheWall } from "./marksOnTheWall.js";
import { growthOfTheWall } from "./growthOfTheWall.js";
import { toeByTheDate } from "./toeByTheDate.js";
import { shapePastThreshold } from "./shapePastThreshold.js";
import { usualShape } from "./usualShape.js";
import { frontAndHindByType } from "./frontAndHindByType.js";
import { shapeAndSize } from "./shapeAndSize.js";
import { feetOfOneVisit } from "./feetOfOneVisit.js";
import { outlinesFrontAndHind } from "./outlinesFrontAndHind.js";
import { frontOrHindFoot } from "./frontOrHindFoot.js";
import { shapeRepeated } from "./shapeRepeated.js";
import { overTheDate } from "./overTheDate.js";
import { prevalenceByLevel } from "./prevalenceByLevel.js";
import { yardChanges } from "./yardChanges.js";
import { studyDeclaration } from "./studyDeclaration.js";
import { studyRecords } from "./studyRecords.js";
import { studyDescription } from "./studyDescription.js";
import { studyExposure } from "./studyExposure.js";
import { rainEffect } from "./rainEffect.js";
import { rainLagAndShape } from "./rainLagAndShape.js";
import { rainSensitivity } from "./rainSensitivity.js";
import { detectableEffect } from "./detectableEffect.js";
import { hornColour } from "./hornColour.js";
import { intervalLength } from "./intervalLength.js";
import type { Focus, Question, Reader } from "./Question.js";
import { rebuild } from "./rebuild.js";
import { shoesStayingOn } from "./shoesStayingOn.js";
import { sinceLastYear } from "./sinceLastYear.js";
import { thrushAfterRain } from "./thrushAfterRain.js";
import { thrushByMonth } from "./thrushByMonth.js";
import { thrushNow } from "./thrushNow.js";
import { whereItVaries } from "./whereItVaries.js";
import { yardsAndGround } from "./yardsAndGround.js";

/** A question that can be asked of a whole study, or of one horse or yard. */
function of(reader: Reader, id: QuestionId, answer: (study: Study) => Answer | NotEnoughData): Question {
  return { ...asked(id), reader, needs: null, ask: (study, focus) => answer(focusOn(study, focus)) };
}

/** The one horse stands beside the others, so the study is cut to the day and the yard but not to the horse. */
function feetBesideTheHerd(study: Study, { horseId, ...rest }: Focus = {}): Answer | NotEnoughData {
  if (horseId === undefined) {
    return {
      kind: "not_enough_data",
      ...asked("feet-of-one-visit"),
      reason: "The four feet are those of one horse, and none was named.",
    };
  }
  focusOn(study, { ...rest, horseId });
  return feetOfOneVisit(focusOn(study, rest), horseId);
}

/** Every question that can be asked, by reader. */
export const questions: readonly Question[] = [
  of("farrier", "feet-seen", feetSeen),
  of("farrier", "feet-long-unseen", feetLongUnseen),
  of("farrier", "over-the-date", overTheDate),
  of("farrier", "new-and-standing-thrush", newAndStandingThrush),
  of("farrier", "hinds-or-fronts", hindsOrFronts),
  of("farrier", "front-and-hind", frontAndHind),
  of("farrier", "shoes-staying-on", shoesStayingOn),
  of("farrier", "thrush-by-month", thrushByMonth),
  of("farrier", "toes-between-visits", toesBetweenVisits),
  of("farrier", "heels-running-under", heelsRunningUnder),
  of("farrier", "fronts-going-odd", frontsGoingOdd),
  of("farrier", "shape-by-interval", shapeByInterval),
  of("farrier", "marks-on-the-wall", marksOnTheWall),
  of("farrier", "growth-of-the-wall", growthOfTheWall),
  of("farrier", "toe-by-the-date", toeByTheDate),
  of("farrier", "shape-past-threshold", shapePastThreshold),
  { ...asked("feet-of-one-visit"), reader: "farrier", needs: "horse", ask: feetBesideTheHerd },

  of("yard manager", "for-the-vet", forTheVet),
  of("yard manager", "due-and-over", dueAndOver),
  of("yard manager", "thrush-now", thrushNow),
  of("yard manager", "since-last-year", sinceLastYear),
  of("yard manager", "since-the-change", yardChanges),
  of("yard manager", "bad-visits-running", badVisitsRunning),
  of("yard manager", "yards-and-ground", yardsAndGround),
  of("yard manager", "horses-to-watch", horsesToWatch),
  of("yard manager", "keeping-the-interval", keepingTheInterval),
  { ...of("yard manager", "horse-history", horseHistory), needs: "horse" },

  of("researcher", "prevalence-by-level", prevalenceByLevel),
  of("researcher", "thrush-after-rain", thrushAfterRain),
  of("researcher", "where-it-varies", whereItVaries),
  of("researcher", "observers-agreeing", observersAgreeing),
  of("researcher", "gaps-and-grades", gapsAndGrades),
  of("researcher", "missing-feet", missingFeet),
  of("researcher", "usual-shape", usualShape),
  of("researcher", "front-and-hind-by-type", frontAndHindByType),
  of("researcher", "shape-and-size", shapeAndSize),
  of("researcher", "outlines-front-and-hind", outlinesFrontAndHind),
  of("researcher", "front-or-hind", frontOrHindFoot),
  of("researcher", "shape-repeated", shapeRepeated),
  of("researcher", "study-declaration", studyDeclaration),
  of("researcher", "study-records", studyRecords),
  of("researcher", "study-description", studyDescription),
  of("researcher", "study-exposure", studyExposure),
  of("researcher", "rain-effect", rainEffect),
  of("researcher", "rain-lag-and-shape", rainLagAndShape),
  of("researcher", "rain-sensitivity", rainSensitivity),
  of("researcher", "detectable-effect", detectableEffect),
  of("researcher", "horn-colour", hornColour),
  of("researcher", "interval-length", intervalLength),
  of("researcher", "rebuild", rebuild),
];
