import type { HorseStay } from "../study/HorseStay.js";
import { requiredDay } from "./requiredDay.js";

/**
 * Last day a horse is there without a break, counted from a day on which it is there; null when it is still there or no stay covers
 * the day. The stays must be those of one horse.
 *
 * Method: a stay that begins on or before the day after another ends carries on from it, as when a horse moves yard.
 *
 * @private
 */
export function presenceEnd(stays: readonly HorseStay[], date: string): string | null {
  const covers = (stay: HorseStay, day: number) =>
    (stay.joinedOn === null || requiredDay(stay.joinedOn) <= day) && (stay.leftOn === null || requiredDay(stay.leftOn) >= day);
  const day = requiredDay(date);
  if (!stays.some((stay) => covers(stay, day))) return null;
  let [end, endDay] = [date, day];
  for (;;) {
    const onwards = stays.filter((stay) => covers(stay, endDay) || covers(stay, endDay + 1));
    if (onwards.some((stay) => stay.leftOn === null)) return null;
    const latest = onwards.reduce((last, stay) => (stay.leftOn! > last ? stay.leftOn! : last), end);
    if (latest === end) return end;
    [end, endDay] = [latest, requiredDay(latest)];
  }
}
