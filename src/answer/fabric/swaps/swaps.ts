import type { FootPair } from "../../../derive/fabric/FootPair.js";
import type { Swap } from "./Swap.js";

const ends = { code: "ends_swapped", words: "front and hind feet" } as const;
const sides = { code: "sides_swapped", words: "left and right feet" } as const;
const diagonals = { code: "diagonals_swapped", words: "diagonal feet" } as const;
const pair = (...feet: FootPair) => feet;
const [left, right] = [pair("LF", "LH"), pair("RF", "RH")];
const [fore, hind] = [pair("LF", "RF"), pair("LH", "RH")];
const [falling, rising] = [pair("LF", "RH"), pair("RF", "LH")];

/** The exchanges of labels that are looked for, likelier mistakes first. A pair is the same object wherever it comes. */
export const swaps: readonly Swap[] = [
  { ...ends, pairs: [left, right] },
  { ...sides, pairs: [fore, hind] },
  { ...ends, pairs: [left] },
  { ...ends, pairs: [right] },
  { ...sides, pairs: [fore] },
  { ...sides, pairs: [hind] },
  { ...diagonals, pairs: [falling, rising] },
  { ...diagonals, pairs: [falling] },
  { ...diagonals, pairs: [rising] },
];
