import type { FootPair } from "../../../derive/fabric/FootPair.js";
import type { Spread } from "../../../estimate/fabric/Spread.js";

/** What speaks, in each set, for an exchange of the labels of a pair of feet. */
export interface LabelWeights {
  readonly pair: FootPair;
  /** How the contrast of each measure spreads in the herd. */
  readonly spreads: readonly Spread[];
  /** Log-likelihood gap of all evidence, that of the measures divided by how much they scatter beyond independence. */
  readonly gap: Float64Array;
  /** The most telling part of it, at least 0. */
  readonly best: Float64Array;
  /** 1 where anything can be told. */
  readonly judgeable: Uint8Array;
  /** Gaps of what is seen and not measured, in words. */
  readonly looks: readonly { readonly title: string; readonly gaps: Float64Array }[];
}
