import type { FootPair } from "../../../derive/fabric/FootPair.js";
import type { FootSet } from "../../../derive/fabric/FootSet.js";
import { requiredDay } from "../../../derive/requiredDay.js";
import { type CategoryHistory, categoryFlip } from "../../../estimate/swap/categoryFlip.js";
import { type EarlierMark, markFlip } from "../../../estimate/swap/markFlip.js";
import type { FootHistories, FootLook } from "./footHistories.js";
import type { PairSwap } from "./PairSwap.js";

const seen = [
  { title: "horn colour", field: "hornColour" },
  { title: "shoes", field: "shoe" },
] as const;

/**
 * Evidence on the labels of a pair from what is seen and not measured: horn colour, shoe, and a mark that moves down the wall. Feet that are
 * alike say nothing and are not named.
 */
export function lookEvidence(
  { horseId, visitDate }: FootSet,
  [a, b]: FootPair,
  feet: FootHistories,
  fewestDays: number,
): PairSwap["others"] {
  const [first, second] = [feet.looks(horseId, a), feet.looks(horseId, b)];
  const now = [lookOn(first, visitDate), lookOn(second, visitDate)] as const;
  if (now[0] === undefined || now[1] === undefined) return [];
  const found: { readonly title: string; readonly gap: number }[] = [];
  for (const { title, field } of seen) {
    const words = [now[0][field], now[1][field]] as const;
    if (words[0] === null || words[1] === null || words[0] === words[1]) continue;
    const histories = [daysOf(first, field, visitDate), daysOf(second, field, visitDate)] as const;
    found.push({ title, gap: categoryFlip(words, histories, fewestDays) });
  }
  const earlier = [earlierMark(first, visitDate), earlierMark(second, visitDate)] as const;
  if (earlier[0] !== null || earlier[1] !== null) {
    const gap = markFlip([now[0].markMm, now[1].markMm], earlier, feet.newMarkShare);
    found.push({ title: "the mark on the wall", gap });
  }
  return found;
}

function lookOn(looks: readonly FootLook[], visitDate: string): FootLook | undefined {
  return looks.find((look) => look.visitDate === visitDate);
}

/** How often each word was written on other days. */
function daysOf(looks: readonly FootLook[], field: "hornColour" | "shoe", visitDate: string): CategoryHistory {
  const counts = new Map<string, number>();
  for (const look of looks) {
    const word = look[field];
    if (word !== null && look.visitDate !== visitDate) counts.set(word, (counts.get(word) ?? 0) + 1);
  }
  return counts;
}

function earlierMark(looks: readonly FootLook[], visitDate: string): EarlierMark | null {
  let found: EarlierMark | null = null;
  for (const look of looks) {
    if (look.visitDate >= visitDate) break;
    if (look.markMm !== null) {
      found = { belowCoronetMm: look.markMm, daysBefore: requiredDay(visitDate) - requiredDay(look.visitDate) };
    }
  }
  return found;
}
