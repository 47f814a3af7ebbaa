import type { FootSet, StandingFoot } from "../../../derive/fabric/FootSet.js";
import { type CategoryHistory, categoryFlip } from "../../../estimate/swap/categoryFlip.js";
import type { FootHistories } from "./footHistories.js";

/** Evidence of the horn colour of one foot that two horses exchanged their rows on a day. */
export function hornFlip(a: FootSet, b: FootSet, foot: StandingFoot, feet: FootHistories, fewestDays: number): number {
  const looks = [a, b].map(({ horseId, visitDate }) => {
    const all = feet.looks(horseId, foot).filter(({ hornColour }) => hornColour !== null);
    const before = all.filter((look) => look.visitDate !== visitDate);
    const history = new Map<string, number>();
    for (const { hornColour } of before) if (hornColour !== null) history.set(hornColour, (history.get(hornColour) ?? 0) + 1);
    return { seen: all.find((look) => look.visitDate === visitDate)?.hornColour ?? null, history };
  });
  const [first, second] = looks;
  const none: CategoryHistory = new Map();
  return categoryFlip([first?.seen ?? null, second?.seen ?? null], [first?.history ?? none, second?.history ?? none], fewestDays);
}
