import type { BinomialColumns } from "./design/binomialOutcome.js";
import type { Term } from "./Term.js";

/** How an exposure and an outcome are related to each other: the model in which the effect stands. */
export interface ExposureModel {
  /** One row a foot at a visit, say. */
  readonly rows: readonly object[];
  /** Column of booleans or 0 and 1, null where it is not known; or columns of cases and of numbers examined. */
  readonly outcome: BinomialColumns;
  /** Column of the exposure: numbers, or booleans. */
  readonly exposure: string;
  /** The odds ratio is for this many units of the exposure: 10 for 10 mm. 1 when left out. */
  readonly per?: number;
  /** What is held equal: harmonics of the season, front or hind, observer. */
  readonly adjust?: readonly Term[];
  /** Columns that name the groups, the outer first: the yard, and the horse in it. The outer groups are the clusters. */
  readonly groups: readonly [string] | readonly [string, string];
  /**
   * `mixed` (left out): random intercepts for the groups; the odds ratio is that of one foot in one place. `gee`: estimating equations; the odds
   * ratio is that of the whole population, nearer to 1.
   */
  readonly method?: "mixed" | "gee";
  /** With fewer outer groups than this they are terms of the model and the inner groups the clusters; 10 when left out. */
  readonly minimumGroups?: number;
  /** Column of weights; for `gee` only. */
  readonly weights?: string;
  /** Confidence level; 0.95 when left out. */
  readonly level?: number;
}
