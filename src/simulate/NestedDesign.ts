/** A study to simulate, with its truth: feet of horses of yards, examined for thrush on several visits. */
export interface NestedDesign {
  readonly yards: number;
  /** On average; all horses together are shared out over the yards as evenly as can be. */
  readonly horsesPerYard: number;
  /** Visits to every yard; all its horses are seen with all four feet. */
  readonly visits: number;
  /** Whether how wet it was (mean 0, standard deviation 1) is one number a yard, or one a visit to a yard. */
  readonly wetBy: "yard" | "visit";
  /** What decides the log odds of thrush. */
  readonly truth: {
    /** In a fore foot of a typical horse of a typical yard in middling weather. */
    readonly intercept: number;
    /** Added for each standard deviation wetter. */
    readonly wet: number;
    /** Added in a hind foot. */
    readonly hind: number;
    /** Standard deviation between yards that are alike in all of this. */
    readonly yardSd: number;
    /** Standard deviation between horses of a yard. */
    readonly horseSd: number;
  };
}
