import type { FootPair } from "../../../derive/fabric/FootPair.js";

/** An exchange of labels that people make. */
export interface Swap {
  readonly code: "ends_swapped" | "sides_swapped" | "diagonals_swapped";
  readonly words: string;
  readonly pairs: readonly FootPair[];
}
