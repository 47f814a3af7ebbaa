import type { HorseStay } from "../study/HorseStay.js";

/**
 * The stay of a horse on a day; null when no stay of that horse covers the day.
 *
 * Method: first and last day of a stay both belong to it. Where two stays share a day, as when a horse moves, the one that began
 * later counts; of two that began on one day, the one that is written first.
 *
 * Missing: no first day means from the first record on, no last day means still there.
 */
export function stayAt(horses: readonly HorseStay[], horseId: string, date: string): HorseStay | null {
  let found: HorseStay | null = null;
  for (const stay of horses) {
    if (stay.horseId !== horseId) continue;
    if (stay.joinedOn !== null && stay.joinedOn > date) continue;
    if (stay.leftOn !== null && stay.leftOn < date) continue;
    if (found === null || (stay.joinedOn ?? "") > (found.joinedOn ?? "")) found = stay;
  }
  return found;
}
