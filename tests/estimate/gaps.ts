import type { ObservedGap } from "../../src/estimate/ObservedGap.js";

/** The gaps of tests/reference/climate/references.R. */
export function gaps(): (ObservedGap & { readonly cluster: string; readonly event: boolean })[] {
  const days = [28, 35, 42, 42, 49, 56, 61, 30, 35, 47, 56, 58, 41, 39, 70, 44];
  const events = [0, 1, 0, 0, 1, 1, 0, 0, 0, 1, 0, 1, 0, 0, 1, 0];
  const clusters = "aaaabbbcccddddee";
  return days.map((each, place) => ({ days: each, event: events[place] === 1, cluster: clusters.charAt(place) }));
}
