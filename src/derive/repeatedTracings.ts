import { grouped } from "../study/grouped.js";
import type { TracedOutline } from "./TracedOutline.js";

/** The same foot, traced twice on one day with no trim in between. */
export interface RepeatedTracing {
  readonly first: TracedOutline;
  readonly second: TracedOutline;
}

/**
 * Tracings of one foot side by side, one pair for each two tracings of a foot on one day at one stage, in the order given: what the
 * repeatability of any measure of an outline is made of.
 *
 * Method: every two usable tracings of one horse, day, foot and stage; three tracings make three pairs. Whether one person traced both
 * is told by `observerId`.
 *
 * Missing: tracings that are not usable make no pair. An unknown stage is a stage of its own.
 *
 * Source: own.
 */
export function repeatedTracings(outlines: readonly TracedOutline[]): RepeatedTracing[] {
  const usable = outlines.filter((outline) => outline.usable);
  const feet = grouped(usable, ({ horseId, visitDate, foot, stage }) => [horseId, visitDate, foot, stage].join("\n"));
  return [...feet.values()].flatMap((tracings) =>
    tracings.flatMap((first, place) => tracings.slice(place + 1).map((second) => ({ first, second }))),
  );
}
