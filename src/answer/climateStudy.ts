import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { detectableEffect, type DetectableOptions } from "./detectableEffect.js";
import { hornColour } from "./hornColour.js";
import { intervalLength } from "./intervalLength.js";
import { rainEffect } from "./rainEffect.js";
import { rainLagAndShape } from "./rainLagAndShape.js";
import { rainSensitivity } from "./rainSensitivity.js";
import { studyDeclaration } from "./studyDeclaration.js";
import { studyDescription } from "./studyDescription.js";
import { studyExposure } from "./studyExposure.js";
import { studyPaper } from "./studyPaper.js";
import { studyRecords } from "./studyRecords.js";
import { yardChanges } from "./yardChanges.js";

const parts: readonly ((study: Study) => Answer | NotEnoughData)[] = [
  studyDeclaration,
  studyRecords,
  studyDescription,
  studyExposure,
  rainEffect,
  rainLagAndShape,
  rainSensitivity,
  hornColour,
  intervalLength,
  yardChanges,
];

/** The climate study from the declaration to what goes into the paper, in this order; a part that the records cannot carry says why. */
export function climateStudy(study: Study, options: DetectableOptions = {}): readonly (Answer | NotEnoughData)[] {
  const replies = [...parts.map((part) => part(study)), detectableEffect(study, options)];
  return [...replies, studyPaper(study, replies)];
}
