import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import type { VisitCells } from "./VisitCells.js";

const notes = [
  "gateway poached",
  "standing in wet straw",
  "ground hard, edges chipped",
  "feet soft all round",
  "moved to the top paddock, drier there",
  "needs a second pair of hands",
  'owner says "a bit footsore" on stones',
  "frost, feet balled with snow",
];

/** A remark on one look in fifty; some hold a comma or quotes, as remarks do. */
export function visitNote(random: RandomSource): VisitCells {
  return random.bernoulli(0.02) ? { note: random.pick(notes) } : {};
}
