import type { MomentsAt } from "../numeric/MarginalMoments.js";

/** Standard deviations of random effects over the residual SD, in the units of the data. */
export interface RelativeSpreads {
  readonly sds: readonly number[];
  /** Of intercept and slope; null where there is none to speak of. */
  readonly correlation: number | null;
}

/** Deviations of the groups in one random effect, by group number; `sds` over the residual SD. */
export interface EffectModes {
  readonly modes: Float64Array;
  readonly sds: Float64Array;
}

/** The random part of a linear mixed model, as the fit needs it: parameters theta and what they mean. */
export interface RandomStructure {
  readonly moments: MomentsAt;
  /** Number of parameters; those not among `free` stay 0. */
  readonly size: number;
  readonly free: readonly number[];
  /** Places of parameters that are standard deviations, whose sign the likelihood does not feel. */
  readonly sds: readonly number[];
  readonly spreads: (theta: Float64Array) => RelativeSpreads;
  /** The parameters that mean these spreads. */
  readonly thetaOf: (spreads: RelativeSpreads) => Float64Array;
  /** Conditional modes of each random effect, given the residuals of the rows from the coefficients. */
  readonly modes: (theta: Float64Array, residuals: Float64Array) => readonly EffectModes[];
}
