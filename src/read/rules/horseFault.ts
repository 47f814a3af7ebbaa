import type { Fault } from "../report/Fault.js";
import { messages } from "../report/messages.js";
import type { KnownHorses } from "./horseRule.js";
import { nearestKnown } from "./nearestKnown.js";

/** Why a row that names a horse cannot be kept: the horse was set aside, or horses.csv does not hold it. null: it can. */
export function horseFault(horses: KnownHorses | null): (horseId: string) => Fault | null {
  if (horses === null) return () => null;
  const nearest = nearestKnown(horses.stays.keys());
  return (horseId) => {
    if (horses.stays.has(horseId)) return null;
    return horses.refused.get(horseId) ?? messages.unknownHorse(horseId, nearest(horseId));
  };
}
