/** Seed of the resamples behind every answer, printed with them, so that the same records give the same limits. @private */
export const seedOfAnswers = "underfoot answers";
