import type { Prediction } from "../../../estimate/swap/Prediction.js";

/** What speaks for an exchange of the labels of two feet in one set. */
export interface PairSwap {
  /** Log-likelihood gap of the measures, and its variance. */
  readonly gap: number;
  readonly information: number;
  /** The part of each measure in the gap, the contrast that was read, and what was expected of it. */
  readonly parts: readonly number[];
  readonly contrast: readonly (number | null)[];
  readonly expected: readonly Prediction[];
  /** Gaps of what is not measured, in words. */
  readonly others: readonly { readonly title: string; readonly gap: number }[];
}
