import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import { districtYards } from "./districtYards.js";

/** Who looks at the feet at a yard on a day: the usual observer, on one day in eight the other one. */
export function observerOn(yardId: string, date: string, yardDays: RandomSource): string {
  const usual = districtYards.find((yard) => yard.yardId === yardId)?.observerId ?? "K";
  const swapped = yardDays.stream(`${yardId} ${date}`).bernoulli(0.125);
  return swapped ? (usual === "K" ? "M" : "K") : usual;
}
