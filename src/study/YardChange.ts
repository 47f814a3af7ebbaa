import type { Source } from "./Source.js";

/** One dated change a yard made: a row of `changes.csv`. Missing is null. */
export interface YardChange extends Source {
  /** Yard that made the change. */
  readonly yardId: string;
  /** First day of the new way. `YYYY-MM-DD`. */
  readonly changedOn: string;
  /** The change, in the keeper's words. null: not said. */
  readonly what: string | null;
}
