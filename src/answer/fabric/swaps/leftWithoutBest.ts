/**
 * What must be left of a log-likelihood gap without its most telling part: one thing may have changed on its own, as a wall that flares
 * does. Common practice, no source.
 */
export const leftWithoutBest = 4;
