import type { FootPair } from "../../../derive/fabric/FootPair.js";

/** Each foot against itself, of two sets. */
export const sameFeet: readonly FootPair[] = [
  ["LF", "LF"],
  ["RF", "RF"],
  ["LH", "LH"],
  ["RH", "RH"],
];
