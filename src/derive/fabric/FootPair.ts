import type { StandingFoot } from "./FootSet.js";

/** Two feet whose labels may have been exchanged. */
export type FootPair = readonly [StandingFoot, StandingFoot];
