import type { FootMeasures, FootState } from "./FootState.js";

/** One foot that was measured at a visit, as it is: what an outline could be traced of. */
export interface TracedFoot {
  readonly foot: FootState["foot"];
  readonly hind: boolean;
  readonly stage: string;
  readonly measures: FootMeasures;
  readonly flares: readonly ("toe" | "medial" | "lateral")[];
}

/** The feet measured at one visit. */
export interface TracedVisit {
  readonly visitDate: string;
  readonly observerId: string;
  readonly feet: readonly TracedFoot[];
}
