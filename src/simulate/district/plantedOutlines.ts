/** What the traced outlines of the simulated district are made with; all values are invented. */
export const plantedOutlines = {
  /** Exponent of the rounding of the toe (superellipse): 2 is an ellipse, more is blunter, less more pointed. */
  foreRoundness: 2.35,
  hindRoundness: 1.9,
  /** Spread of the roundness over horses, and over the feet of a horse. */
  horseSd: 0.06,
  footSd: 0.05,
  /** Where the foot is widest, as a share of its length from the heels. */
  foreWidest: 0.43,
  hindWidest: 0.38,
  /** Width at the heel buttresses over the greatest width. */
  foreHeels: 0.66,
  hindHeels: 0.72,
  /** How much further than half the outer border lies from the midline, as a share of half the width: always, and where the wall flares. */
  outerBulge: 0.015,
  flareBulge: 0.045,
  bulgeSd: 0.008,
  /** A hand that traces: slow wander along the ring and jitter of each point, and where it sees a landmark, mm. */
  wanderSdMm: 0.35,
  jitterSdMm: 0.25,
  landmarkSdMm: 0.6,
  /** Points of a wall and of a frog. */
  wallPoints: 48,
  frogPoints: 20,
} as const;
