import type { StandingFoot } from "./FootSet.js";

/** The feet of a set in the order of their places in a `FootTable`. */
export const standingFeet = ["LF", "RF", "LH", "RH"] as const satisfies readonly StandingFoot[];
